namespace PushSim.Plotting.Report;

/// <summary>The replay's part of a page: one stage with the robots from the side and from above, the slider with its events, the keys.</summary>
internal static class ReplayWriter
{
    /// <summary>Writes it.</summary>
    /// <param name="html">The page.</param>
    /// <param name="result">The run.</param>
    /// <param name="note">Which run it is; may be empty.</param>
    public static void Write(TextWriter html, RunResult result, string note)
    {
        string end = FormattableString.Invariant($"{result.Time[^1]:0.###}");
        string told = note.Length > 0 ? $"<p>{HtmlText.Of(note)}</p>" : "";
        bool hasPush = result.Trace.Contact is not null;
        string slip = ReplayData.FullSlip(result).ToString("0.0", CultureInfo.InvariantCulture);
        html.WriteLine(
            $"""
            <section id="replay" aria-labelledby="h-replay"><h2 id="h-replay">Replay</h2>{told}
            <noscript><p>The replay needs JavaScript; everything else on this page does without.</p></noscript>
            <div id="player" hidden>
            <div id="dock">
            <svg id="side" role="img" aria-label="The robots from the side at the time of the slider"></svg>
            <svg id="stage" role="img" aria-label="The robots from above at the time of the slider; the table below has the same in numbers"></svg>
            <p id="said" aria-live="polite"></p>
            <div class="bar" role="group" aria-label="Replay controls">
            <button type="button" id="play" aria-keyshortcuts="Space">Play</button>
            <label class="time">Time <input id="time" type="range" min="0" max="{end}" step="any" value="{end}" list="events"></label><datalist id="events"></datalist>
            <output id="clock" for="time" aria-live="off">{end} s</output>
            <label>Speed <select id="speed"><option value="0.05">1/20</option><option value="0.1">1/10</option><option value="0.25">1/4</option><option value="0.5" selected>1/2</option><option value="1">real time</option><option value="2">double</option></select></label>
            <label><input id="follow" type="checkbox"> Follow</label>
            </div>
            <div id="marks" role="group" aria-label="Moments"></div>
            </div>
            <div id="curve"></div>
            <p class="hint">Keys while the replay has the focus: <kbd>Space</kbd> play or pause, <kbd>←</kbd> <kbd>→</kbd> one frame, with <kbd>Shift</kbd> ten, <kbd>Home</kbd> <kbd>End</kbd> first and last, <kbd>[</kbd> <kbd>]</kbd> slower and faster. A click on a curve over time goes to that moment.</p>
            <div class="key"><span><i class="swatch load"></i>filled length: load on the wheel</span><span><i class="swatch slip"></i>the lighter, the faster its tread slips: none to {slip} m/s</span><span><i class="swatch dash"></i>dashed: slips faster than 0.05 m/s</span>{(hasPush ? "<span><i class=\"swatch arrow\"></i>arrow: which way the pair goes</span>" : "")}<span><i class="swatch trail"></i>trail of the balance point</span></div>
            <details><summary>Load and slip of each wheel at the time of the slider</summary>
            <div class="scroll" tabindex="0" role="region" aria-label="Wheels at the time of the slider"><table id="wheels"><caption>Load and slip at the time of the slider</caption><thead><tr><th scope="col">Robot</th><th scope="col">Wheel</th><th scope="col" class="n">Force [N]</th><th scope="col" class="n">Slip [m/s]</th></tr></thead><tbody></tbody></table></div></details>
            </div></section>
            """);
    }
}
