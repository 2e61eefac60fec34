namespace PushSim.Scenarios.Shelf;

/// <summary>How far a number of the shelf can be traced.</summary>
public enum ShelfOrigin
{
    /// <summary>A named page, standard or paper, or what the class of material is by its name.</summary>
    Source,

    /// <summary>A rule of the trade.</summary>
    CommonPractice,

    /// <summary>A guess that is no evidence.</summary>
    Estimate,
}
