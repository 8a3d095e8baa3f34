package tideless.sim;

import java.util.ArrayList;
import java.util.List;
import tideless.solution.Component;

/** All the water and all of each component in a rig at one instant, and the ledgers between two. */
record Stock(double waterM3, double[] mol) {
    private static final String FOUND = "found beyond by readings";
    private static final String MISSED = "missed by readings";
    private static final String LEAKED = "leaked from reservoirs";

    static Stock of(List<TrayRun> trays, List<ReservoirRun> reservoirs) {
        double water = 0;
        double[] mol = new double[Component.COUNT];
        for (TrayRun tray : trays) {
            water += tray.water.m3;
            for (int i = 0; i < mol.length; i++) {
                mol[i] += tray.salts.mol[i] + tray.salts.driedMol[i];
            }
        }
        for (ReservoirRun reservoir : reservoirs) {
            water += reservoir.water.m3;
            for (int i = 0; i < mol.length; i++) {
                mol[i] += reservoir.mol[i];
            }
        }
        return new Stock(water, mol);
    }

    static Ledger waterLedger(
            Stock start,
            Stock end,
            List<TrayRun> trays,
            List<ReservoirRun> reservoirs,
            LoggedDays logged) {
        double refills = 0;
        double reservoirAir = 0;
        double leaked = 0;
        for (ReservoirRun reservoir : reservoirs) {
            leaked += reservoir.leakedTotalM3;
            refills += reservoir.refilledTotalM3;
            reservoirAir += reservoir.evaporatedTotalM3;
        }
        double topUps = 0;
        double fresh = 0;
        double transpired = 0;
        double trayAir = 0;
        double drained = 0;
        double spilled = 0;
        for (TrayRun tray : trays) {
            topUps += tray.toppedUpM3;
            fresh += tray.freshM3;
            transpired += tray.transpirationTotalM3;
            trayAir += tray.evaporationTotalM3;
            drained += tray.drainedM3;
            spilled += tray.spiltTotalM3;
        }
        return new Ledger(
                "water",
                "m3",
                start.waterM3,
                with(
                        List.of(
                                new Ledger.Entry("reservoir refills", refills),
                                new Ledger.Entry("hand top-ups", topUps),
                                new Ledger.Entry("fresh solution", fresh)),
                        new Ledger.Entry(FOUND, logged.foundM3)),
                end.waterM3,
                with(
                        List.of(
                                new Ledger.Entry("drunk by plants", transpired),
                                new Ledger.Entry("evaporated from trays", trayAir),
                                new Ledger.Entry("evaporated from reservoirs", reservoirAir),
                                new Ledger.Entry("drained", drained),
                                new Ledger.Entry("spilled", spilled)),
                        new Ledger.Entry(MISSED, logged.missedM3),
                        new Ledger.Entry(LEAKED, leaked)));
    }

    /** A list of ways, and those beside it that anything went. */
    private static List<Ledger.Entry> with(List<Ledger.Entry> ways, Ledger.Entry... beside) {
        List<Ledger.Entry> all = new ArrayList<>(ways);
        for (Ledger.Entry way : beside) {
            if (way.amount() > 0) {
                all.add(way);
            }
        }
        return all;
    }

    static List<Ledger> componentLedgers(
            Stock start,
            Stock end,
            List<TrayRun> trays,
            List<ReservoirRun> reservoirs,
            LoggedDays logged) {
        List<Ledger> ledgers = new ArrayList<>();
        for (int i = 0; i < Component.COUNT; i++) {
            double refills = 0;
            double fallen = 0;
            double leaked = 0;
            for (ReservoirRun reservoir : reservoirs) {
                leaked += reservoir.leakedMol[i];
                refills += reservoir.refilledMol[i];
                fallen += reservoir.precipitate.mol(Component.at(i));
            }
            double topUps = 0;
            double fresh = 0;
            double uptake = 0;
            double drained = 0;
            double spilled = 0;
            for (TrayRun tray : trays) {
                topUps += tray.salts.toppedUpMol[i];
                fresh += tray.salts.freshMol[i];
                uptake += tray.salts.uptakeMol[i];
                drained += tray.salts.drainedMol[i];
                spilled += tray.salts.spiltMol[i];
                fallen += tray.precipitate.mol(Component.at(i));
            }
            // The carbon of lime scale is the air's own.
            double fromAir = Component.at(i) == Component.C ? fallen : 0;
            ledgers.add(
                    new Ledger(
                            Component.at(i).symbol(),
                            "mol",
                            start.mol[i],
                            with(
                                    List.of(
                                            new Ledger.Entry("reservoir refills", refills),
                                            new Ledger.Entry("hand top-ups", topUps),
                                            new Ledger.Entry("fresh solution", fresh),
                                            new Ledger.Entry("from the air", fromAir)),
                                    new Ledger.Entry(FOUND, logged.foundMol[i])),
                            end.mol[i],
                            with(
                                    List.of(
                                            new Ledger.Entry("taken by plants", uptake),
                                            new Ledger.Entry("drained", drained),
                                            new Ledger.Entry("spilled", spilled),
                                            new Ledger.Entry("precipitated", fallen)),
                                    new Ledger.Entry(MISSED, logged.missedMol[i]),
                                    new Ledger.Entry(LEAKED, leaked))));
        }
        return ledgers;
    }
}
