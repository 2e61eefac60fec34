namespace PushSim.Runs;

/// <summary>The throttle at which a robot that stands pushes hardest: less than full where grip falls with slip.</summary>
/// <param name="Throttle">It, 0..1 [1].</param>
/// <param name="Push">Push there [N].</param>
/// <param name="Asked">Throttle that is commanded, 0..1 [1].</param>
/// <param name="AskedPush">Push there [N].</param>
/// <param name="ThrottleLow">Least of it over the assumed falls of friction [1].</param>
/// <param name="ThrottleHigh">Greatest of it over them [1].</param>
/// <param name="WorthLow">Least worth over them, as a share of the push at the commanded throttle [1].</param>
/// <param name="WorthHigh">Greatest worth over them [1].</param>
public sealed record BestThrottle(double Throttle, double Push, double Asked, double AskedPush, double ThrottleLow, double ThrottleHigh, double WorthLow, double WorthHigh)
{
    /// <summary>What it is worth, as a share of the push at the commanded throttle [1].</summary>
    public double Worth => (Push / AskedPush) - 1.0;
}
