using PushSim.Scenarios.Units;
using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>
/// Keys of a robot file that give the model's own numbers in another way: what a builder can weigh, measure and drop, from which they are estimated where they
/// are not given; parts of the shelf; how drawn errors are shared between parts, which single runs do not use.
/// </summary>
internal static class BuilderKeys
{
    public static readonly KeyDefinition[] All =
    [
        Quantity("chassis", "front_scale_weight", Dimension.Mass, 0, 500, "What a scale shows under the foremost wheels, robot level on these and the rearmost ones only.", "620 g").Usual(0.03, 4),
        Quantity("chassis", "rear_scale_weight", Dimension.Mass, 0, 500, "What a scale shows under the rearmost wheels, robot level on these and the foremost ones only.", "740 g").Usual(0.03, 4),
        Quantity("chassis", "left_scale_weight", Dimension.Mass, 0, 500, "What a scale shows under the leftmost wheels, robot level on these and the rightmost ones only.", "680 g").Usual(0.03, 4),
        Quantity("chassis", "right_scale_weight", Dimension.Mass, 0, 500, "What a scale shows under the rightmost wheels, robot level on these and the leftmost ones only.", "680 g").Usual(0.03, 4),
        Quantity("chassis", "tilt_rise", Dimension.Length, 1e-3, 3, "Tilt test: how far the front axle was raised; gives the height of the centre of mass.", "60 mm").Usual(0.01, 0.3),
        Quantity("chassis", "tilt_front_weight", Dimension.Mass, 0, 500, "Tilt test: what the scale shows under the raised front wheels, free to roll.", "560 g").Usual(0.02, 4),
        Quantity("chassis", "tilt_rear_weight", Dimension.Mass, 0, 500, "Tilt test: what the scale shows under the rear wheels, front raised.", "800 g").Usual(0.02, 4),

        Quantity("tyre", "width", Dimension.Length, 1e-4, 1, "Width of the cover on the floor.", "20 mm").Usual(0.004, 0.08).Apart(Blank.Tyre, t => t.CoverWidth, (t, v) => t with { CoverWidth = v }).Of(Blank.TyreData, t => t.Width, (t, v) => t with { Width = v }),
        Quantity("tyre", "tread_thickness", Dimension.Length, 1e-4, 0.5, "Thickness of the cover on its hub.", "10 mm").Usual(0.0005, 0.03).Apart(Blank.Tyre, t => t.CoverThickness, (t, v) => t with { CoverThickness = v }).Of(Blank.TyreData, t => t.Thickness, (t, v) => t with { Thickness = v }),
        Choice("tyre", "material", ["rubber", "silicone", "polyurethane", "printed", "closed-cell foam", "open-cell foam"], "What the cover is made of; printed is a solid flexible plastic.", "a solid if shore_a is given"),
        Quantity("tyre", "modulus", Dimension.Pressure, 1e3, 1e10, "Young's modulus of the cover; replaces the one from hardness.", "0.4 MPa", "from shore_a, or of a foam from density and solid_shore_a").Usual(3e4, 3e9).Of(Blank.TyreData, t => t.Modulus, (t, v) => t with { Modulus = v }),
        Number("tyre", "shore_a", 5, 95, "Shore A hardness of a solid cover.", "40").Usual(10, 95).Of(Blank.TyreData, t => t.ShoreA, (t, v) => t with { ShoreA = v }),
        Number("tyre", "solid_shore_a", 5, 95, "Shore A hardness of the solid that a foam is made of.", "60").Usual(10, 95).Of(Blank.TyreData, t => t.SolidShoreA, (t, v) => t with { SolidShoreA = v }),
        Quantity("tyre", "density", Dimension.Density, 5, 5000, "Density of the cover.", "0.25 g/cm3", "usual for the material, not for a foam").Usual(30, 2500).Apart(Blank.Tyre, t => t.CoverDensity, (t, v) => t with { CoverDensity = v }).Of(Blank.TyreData, t => t.Density, (t, v) => t with { Density = v }),
        Number("tyre", "poisson_ratio", 0, 0.5, "Poisson's ratio of the cover.", "0.49", "0.5 for solids, 0 for foams").Usual(0, 0.5).Of(Blank.TyreData, t => t.Poisson, (t, v) => t with { Poisson = v }),
        Number("tyre", "rebound", 0.01, 0.99, "Share of its height to which a ball dropped on the cover, or the dropped wheel, comes back.", "\"45 %\"", "rebound_height / drop_height, else 50 % for hard bumps alone").Usual(0.05, 0.9).Apart(Blank.Tyre, t => t.Rebound, (t, v) => t with { Rebound = v }),
        Quantity("tyre", "drop_height", Dimension.Length, 1e-3, 10, "Height of that drop.", "500 mm").Usual(0.1, 2),
        Quantity("tyre", "rebound_height", Dimension.Length, 1e-4, 10, "Height it came back to.", "225 mm").Usual(0.01, 1.5),
        Quantity("tyre", "hub_stiffness", Dimension.Stiffness, 10, 1e9, "Stiffness of hub, shaft and mount at the contact, in series with the estimated cover in every direction.", "40 kN/m", "rigid").Usual(2e3, 1e6).Of(Blank.TyreData, t => t.HubStiffness, (t, v) => t with { HubStiffness = v }),

        Whole("motor", "gear_stages", 1, 12, "Count of gear stages, for an estimate of gear_efficiency.", "3"),
        Choice("motor", "gear_kind", ["spur", "planetary", "worm"], "Kind of those stages."),
        Whole("drive", "gear_stages", 1, 12, "Count of gear stages from motor to wheels, for an estimate of gear_efficiency.", "3"),
        Choice("drive", "gear_kind", ["spur", "planetary", "worm"], "Kind of those stages."),

        Quantity("battery", "first_load_current", Dimension.Current, 0, 1e4, "Current of a first steady load, 0 for none.", "1 A").Usual(0, 50),
        Quantity("battery", "first_load_voltage", Dimension.Voltage, 0.1, 1000, "Pack voltage under it.", "11.9 V").Usual(3, 35),
        Quantity("battery", "second_load_current", Dimension.Current, 0, 1e4, "Current of a second steady load.", "6 A").Usual(0.2, 100),
        Quantity("battery", "second_load_voltage", Dimension.Voltage, 0.1, 1000, "Pack voltage under it; the two give the resistance.", "11.2 V").Usual(3, 35),

        Text("tyre", "shelf", "Material of the parts shelf by its name or an alias, such as PLA, TPU 95A or silicone (pushsim shelf lists them); gives every value that the tyre does not give itself. Sizes stay yours: width and tread_thickness.", "cast silicone 20A", "none"),
        Number("tyre", "own_share", 0, 1, "When values are drawn from their tolerances: share of the variance that each wheel's tyre has for itself; 0 for tyres from one print or sheet, which share their error.", "0.3", "0").Usual(0, 1),
        Number("motor", "own_share", 0, 1, "When values are drawn from their tolerances: share of the variance that each motor has for itself; 0 for one error of all, 1 for errors of their own.", "0.5", "0").Usual(0, 1),
        Text("motor", "shelf", "Motor of the parts shelf (pushsim shelf lists them); gives every value that the motor does not give itself. Its winding data are at the motor shaft, so another gear_ratio keeps the rest right.", "25 mm brushed gearmotor, 12 V, 20:1", "none"),
        Text("controller", "shelf", "Controller of the parts shelf (pushsim shelf lists them); gives every value that the controller does not give itself.", "integrated bridge, 3.6 A", "none"),
        Text("battery", "shelf", "Cell of the parts shelf (pushsim shelf lists them); gives the pack's resistance, that of a cell of 1 A h times cells over capacity, and its voltage curve.", "lithium polymer, 20C", "none"),
    ];
}
