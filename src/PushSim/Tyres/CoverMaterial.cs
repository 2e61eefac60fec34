namespace PushSim.Tyres;

/// <summary>Class of a tyre cover's material; decides how its modulus is found and what is assumed where nothing is given.</summary>
public enum CoverMaterial
{
    /// <summary>Solid rubber, natural or synthetic.</summary>
    Rubber,

    /// <summary>Solid silicone rubber.</summary>
    Silicone,

    /// <summary>Solid cast polyurethane.</summary>
    Polyurethane,

    /// <summary>Flexible plastic, printed without hollow infill.</summary>
    Printed,

    /// <summary>Foam whose cells are closed.</summary>
    ClosedFoam,

    /// <summary>Foam that breathes.</summary>
    OpenFoam,
}
