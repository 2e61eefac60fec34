using PushSim.Numerics;
using PushSim.Tests.Problems;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>Zeros on the dense output. Numbers of the thrown and bouncing balls: closed form, computed here.</summary>
public class EventFinderTests
{
    [Theory]
    [InlineData(1, 20.0, 100.0, 0.0)]
    [InlineData(0, 40.0, 0.0, -10.0)]
    public void Thrown_body_has_its_apex_and_its_ground_contact(int component, double time, double height, double speed)
    {
        // y'' = -0.5 from 0 with 10
        Flight flight = Fly(new Ballistic(0.0, 10.0, 0.5, 60.0), component, 60.0);
        Assert.Equal(time, flight.Time, 1e-10);
        Assert.Equal(height, flight.State[0], 1e-9);
        Assert.Equal(speed, flight.State[1], 1e-9);
    }

    [Fact]
    public void Bouncing_ball_from_a_height_hits_in_time()
    {
        Flight flight = Fly(new Ballistic(10.0, 15.0, 9.81, 10.0), 0, 10.0);
        Assert.Equal(3.621116988, flight.Time, 1e-9);
        Assert.Equal(-Math.Sqrt((15.0 * 15.0) + (2.0 * 9.81 * 10.0)), flight.State[1], 1e-8); // energy
    }

    [Fact]
    public void Bounces_of_the_ball_end_at_the_limit()
    {
        // e = 0.8, 60 bounces: the rest of the series is 0.8^60 of it
        Assert.Equal(20.357636989, Bounce(10.0, 15.0, 9.81, 0.8, 60)[^1], 1e-4);
    }

    [Theory]
    [InlineData(0, 4.081632653)]
    [InlineData(1, 7.755102041)]
    [InlineData(2, 11.061224490)]
    [InlineData(3, 14.036734694)]
    [InlineData(4, 16.714693878)]
    public void Ball_from_the_ground_hits_at_the_known_times(int bounce, double time) =>
        Assert.Equal(time, Bounce(0.0, 20.0, 9.8, 0.9, 5)[bounce], 1e-9);

    [Fact]
    public void Only_a_rise_is_an_event()
    {
        // (t - 1)(t - 2)(t + 1) on [0, 3]: falls through zero at 1, rises at 2
        Assert.True(Finder().TryFind(Cubic(), out double found));
        Assert.Equal(2.0, found, 1e-12);
    }

    [Fact]
    public void Zero_at_the_start_belongs_to_the_step_before()
    {
        DenseOutput up = DenseOutputTests.View(1, 0.0, 1.0, 0.0, 1.0, 1.0, 1.0);
        DenseOutput before = DenseOutputTests.View(1, -1.0, 0.0, -1.0, 1.0, 0.0, 1.0);
        Assert.False(Finder().TryFind(up, out _));
        Assert.True(Finder().TryFind(before, out double time));
        Assert.Equal(0.0, time);
    }

    [Fact]
    public void Search_allocates_nothing()
    {
        EventFinder<Component> finder = Finder();
        DenseOutput cubic = Cubic();
        finder.TryFind(cubic, out _);
        long before = GC.GetAllocatedBytesForCurrentThread();
        finder.TryFind(cubic, out _);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    private static EventFinder<Component> Finder() => new(new Component(0), 1);

    // t^3 - 2 t^2 - t + 2
    private static DenseOutput Cubic() => DenseOutputTests.View(1, 0.0, 3.0, 2.0, -1.0, 8.0, 14.0);

    /// <summary>Times at which a ball hits the ground.</summary>
    internal static List<double> Bounce(double height, double speed, double gravity, double restitution, int bounces)
    {
        List<double> hits = [];
        double t = 0.0;
        for (int i = 0; i < bounces; i++)
        {
            Flight flight = Fly(new Ballistic(height, speed, gravity, 10.0), 0, 10.0);
            t += flight.Time;
            hits.Add(t);
            (height, speed) = (0.0, -restitution * flight.State[1]);
        }

        return hits;
    }

    private static Flight Fly(Ballistic p, int component, double end)
    {
        SingleRun<Problem> integration = new(p, AdditiveTableau.ByName("ARK4(3)"));
        Flight flight = new(component);
        IntegrationSettings settings = new() { RelativeTolerance = 1e-8, AbsoluteTolerances = [1e-8, 1e-8] };
        IntegrationOutcome r = integration.Run(0.0, end, p.Start, [], settings, flight);
        Assert.Equal(IntegrationStatus.Stopped, r.Status);
        return flight;
    }

    private readonly struct Component(int index, double sign = 1.0) : IEventFunction
    {
        public double Evaluate(double t, ReadOnlySpan<double> y) => sign * y[index];
    }

    private sealed class Flight(int component) : IStepObserver
    {
        private readonly EventFinder<Component> _finder = new(new Component(component, -1.0), 2);

        public double Time { get; private set; }

        public double[] State { get; } = new double[2];

        public StepDecision OnStep(DenseOutput step)
        {
            if (!_finder.TryFind(step, out double time))
            {
                return StepDecision.Continue;
            }

            Time = time;
            step.Evaluate(time, State);
            return StepDecision.Stop;
        }
    }
}
