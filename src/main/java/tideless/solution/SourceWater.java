package tideless.solution;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A water before anything is put in.
 *
 * @param id lower-case words with hyphens
 * @param title as a person would say it
 * @param composition mol/m3; its carbon is that which gives {@code typicalPh}
 * @param typicalPh as it comes from the tap or the sky, 25 degC
 * @param source where the figures come from
 * @param standing how well they are founded
 */
public record SourceWater(
        String id,
        String title,
        Composition composition,
        double typicalPh,
        String source,
        Standing standing) {
    private static final String USUAL = "constructed, charge balanced, in the usual ranges";

    private static final List<SourceWater> ALL =
            List.of(
                    new SourceWater(
                            "pure",
                            "Pure water in air",
                            Acidity.inAir(
                                    Composition.WATER, 25, ElectricalConductivity.AIR_CO2_PPM),
                            Acidity.phInAir(
                                    Composition.WATER, 25, ElectricalConductivity.AIR_CO2_PPM),
                            "pure water and air of 420 ppm CO2",
                            Standing.CONSTRUCTED),
                    rain(),
                    // Ca, Mg, Na, K, NH4, Cl, SO4, NO3; bicarbonate is what balances.
                    water(
                            "reverse-osmosis",
                            "Reverse-osmosis permeate",
                            USUAL,
                            6.0,
                            0.01,
                            0,
                            0.15,
                            0,
                            0.12,
                            0,
                            0),
                    water(
                            "soft-tap",
                            "Soft tap water",
                            USUAL,
                            7.5,
                            0.25,
                            0.08,
                            0.28,
                            0.03,
                            0.30,
                            0.12,
                            0.03),
                    // 55, 12, 28, 3.2, 77, 20 mg/L of Ca, Mg, Na, K, SO4, Cl; the printed 170 mg/L
                    // of bicarbonate is 2.79 mmol/L, 0.08 short of balance.
                    water(
                            "medium-tap",
                            "Medium tap water",
                            "worked example of Standard Methods 2510, from memory; bicarbonate by"
                                    + " balance",
                            7.5,
                            1.3723,
                            0.4937,
                            1.2179,
                            0.0818,
                            0.5641,
                            0.8016,
                            0),
                    water(
                            "hard-tap",
                            "Hard tap water",
                            USUAL,
                            7.4,
                            2.75,
                            0.25,
                            0.70,
                            0.10,
                            0.90,
                            0.40,
                            0.10));

    public SourceWater {
        Objects.requireNonNull(id, "id");
        Objects.requireNonNull(title, "title");
        Objects.requireNonNull(composition, "composition");
        Objects.requireNonNull(source, "source");
        Objects.requireNonNull(standing, "standing");
    }

    private static SourceWater rain() {
        Map<Component, Double> m = new EnumMap<>(Component.class);
        m.put(Component.CA, 0.015);
        m.put(Component.MG, 0.007);
        m.put(Component.NA, 0.05);
        m.put(Component.NH4, 0.03);
        m.put(Component.CL, 0.06);
        m.put(Component.SO4, 0.02);
        m.put(Component.NO3, 0.03);
        double ppm = ElectricalConductivity.AIR_CO2_PPM;
        Composition inAir = Acidity.inAir(Composition.of(m), 25, ppm);
        return new SourceWater(
                "rain",
                "Rain",
                inAir,
                Acidity.phInAir(inAir, 25, ppm),
                USUAL,
                Standing.CONSTRUCTED);
    }

    private static SourceWater water(
            String id,
            String title,
            String source,
            double ph,
            double ca,
            double mg,
            double na,
            double k,
            double cl,
            double so4,
            double no3) {
        Map<Component, Double> m = new EnumMap<>(Component.class);
        m.put(Component.CA, ca);
        m.put(Component.MG, mg);
        m.put(Component.NA, na);
        m.put(Component.K, k);
        m.put(Component.CL, cl);
        m.put(Component.SO4, so4);
        m.put(Component.NO3, no3);
        Composition bare = Composition.of(m);
        double carbon = Acidity.carbonForPh(bare, 25, ph).orElseThrow();
        return new SourceWater(
                id,
                title,
                bare.with(Component.C, carbon),
                ph,
                source,
                source.equals(USUAL) ? Standing.CONSTRUCTED : Standing.FROM_MEMORY);
    }

    /** One by its id. */
    public static Optional<SourceWater> named(String id) {
        return ALL.stream().filter(w -> w.id().equals(id)).findFirst();
    }

    /** The ids, in order. */
    public static List<String> names() {
        List<String> names = new ArrayList<>();
        ALL.forEach(w -> names.add(w.id()));
        return List.copyOf(names);
    }
}
