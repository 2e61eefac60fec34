namespace PushSim.Scenarios.Studies;

/// <summary>What a fit lacks besides right files.</summary>
public enum FitLack
{
    /// <summary>The load on the tested tyres.</summary>
    Load,

    /// <summary>A scenario of the test, to simulate it.</summary>
    Scenario,

    /// <summary>A tether and a pull or drag in that scenario.</summary>
    Tether,

    /// <summary>A scenario of a drag: the robot was dragged and the scenario's pulls.</summary>
    DragScenario,

    /// <summary>That the robot was dragged, as in the scenario.</summary>
    Drag,

    /// <summary>Logs over time, to simulate them.</summary>
    Traces,

    /// <summary>A tether low enough, or forces small enough, to leave the tested tyres on the floor.</summary>
    LowTether,
}
