namespace PushSim.Cli.Shared;

/// <summary>The files of a command line, for the commands that an answer suggests.</summary>
internal static class Asked
{
    /// <summary>A file with what was read beside it.</summary>
    public static AskedFiles Of(string file, ReadOptions options) => new(file) { Opponent = options.Opponent, Scene = options.Scene, Garage = options.Garage, Set = options.Set };

    /// <summary>The same for a page, which is shown to others: not the folders of this machine.</summary>
    public static AskedFiles OnPage(string file, ReadOptions options) => Of(PageReport.Shown(file), options) with
    {
        Opponent = options.Opponent is { } opponent ? PageReport.Shown(opponent) : null, Scene = options.Scene is { } scene ? PageReport.Shown(scene) : null, Garage = options.Garage is { } garage ? PageReport.Shown(garage) : null,
    };
}
