package tideless.scenario;

/**
 * Which keys stand in which table of a scenario. A {@code *} stands for a name the user chooses, or
 * for the number of a table among several of one name.
 */
final class ScenarioKeys {
    private ScenarioKeys() {}

    static final KeyTable TABLE =
            new KeyTable()
                    .at("", TopKeys.KEYS)
                    .at("place", PlaceKeys.KEYS)
                    .at("climate", ClimateKeys.KEYS)
                    .at("climate.columns", ColumnKeys.KEYS)
                    .at("lamp", LampKeys.KEYS)
                    .at("water", LiquidKeys.WATER)
                    .at("water.analysis", LiquidKeys.WATER_ANALYSIS.keys)
                    .at("feed", LiquidKeys.FEED)
                    .at("feed.part_a", LiquidKeys.PART_A.keys)
                    .at("feed.part_b", LiquidKeys.PART_B.keys)
                    .at("feed.analysis", LiquidKeys.FEED_ANALYSIS.keys)
                    .at("reservoir.*", VesselKeys.KEYS)
                    .at("reservoir.*", ReservoirKeys.KEYS)
                    .at("reservoir.*.tubing", TubingKeys.TRUNK.keys)
                    .at("tray.*", VesselKeys.KEYS)
                    .at("tray.*", TrayKeys.KEYS)
                    .at("tray.*.transplant", TransplantKeys.KEYS)
                    .at("tray.*.leaf_picking", LeafPickingKeys.KEYS)
                    .guest("tray.*", CropReader.OVERRIDE)
                    .list("tray.*.next")
                    .at("tray.*.next.*", NextKeys.KEYS)
                    .at("tray.*.next.*", TrayKeys.CROP_KEYS)
                    .at("tray.*.next.*.transplant", TransplantKeys.KEYS)
                    .at("tray.*.next.*.leaf_picking", LeafPickingKeys.KEYS)
                    .guest("tray.*.next.*", CropReader.OVERRIDE)
                    .at("tray.*.next.*.limits", LimitKeys.KEYS)
                    .at("tray.*.valve", ValveKeys.KEYS)
                    .at("tray.*.valve.tubing", TubingKeys.BRANCH.keys)
                    .at("tray.*.hand", HandKeys.KEYS)
                    .at("tray.*.lamp", LampKeys.KEYS)
                    .at("tray.*.limits", LimitKeys.KEYS)
                    .at("visits", VisitKeys.KEYS)
                    .at("log", LogKeys.KEYS)
                    .at("run", RunKeys.KEYS);
}
