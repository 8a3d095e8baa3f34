package tideless.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.DoubleStream;

/**
 * What hangs or stands in a vessel and takes the place of solution there: bodies with a level
 * section that is the same from one height to another.
 *
 * <p>Where they overlap in height their sections add. {@link #NONE} is the only one without bodies.
 */
public final class Displacement {
    /** Nothing but solution. */
    public static final Displacement NONE = new Displacement(List.of());

    /**
     * Share of the vessel's own section that must stay free at every level; assumed. With less no
     * level could be told from a volume.
     */
    public static final double LEAST_FREE_FRAC = 0.01;

    /**
     * One body, or several alike.
     *
     * @param areaM2 level section through which no solution stands, all together, m2
     * @param fromM its underside above the vessel's floor, m
     * @param toM its top above the vessel's floor, m
     */
    public record Solid(double areaM2, double fromM, double toM) {
        public Solid {
            if (!(areaM2 > 0 && areaM2 < 1000)) {
                throw new IllegalArgumentException("areaM2 must lie in (0, 1000), was " + areaM2);
            }
            if (!(fromM >= 0 && fromM < toM && toM < 10)) {
                throw new IllegalArgumentException(
                        "fromM must lie in [0, toM), toM below 10, were %s and %s"
                                .formatted(fromM, toM));
            }
        }
    }

    private final List<Solid> solids;

    // Layers from the lowest underside upwards; the last one, above all tops, has no section.
    private final double[] fromM;
    private final double[] sectionM2;
    private final double[] belowM3;

    private Displacement(List<Solid> solids) {
        this.solids = solids;
        fromM = solids.stream().flatMapToDouble(Displacement::ends).sorted().distinct().toArray();
        sectionM2 = new double[fromM.length];
        belowM3 = new double[fromM.length];
        for (int k = 0; k < fromM.length; k++) {
            for (Solid solid : solids) {
                if (solid.fromM() <= fromM[k] && fromM[k] < solid.toM()) {
                    sectionM2[k] += solid.areaM2();
                }
            }
            if (k > 0) {
                belowM3[k] = belowM3[k - 1] + sectionM2[k - 1] * (fromM[k] - fromM[k - 1]);
            }
        }
    }

    private static DoubleStream ends(Solid solid) {
        return DoubleStream.of(solid.fromM(), solid.toM());
    }

    /** Of these bodies; {@link #NONE} when there are none. */
    public static Displacement of(List<Solid> solids) {
        return solids.isEmpty() ? NONE : new Displacement(List.copyOf(solids));
    }

    /** Whether there are no bodies. */
    @SuppressWarnings("ReferenceEquality") // the only one without, and asked at every step
    public boolean isNone() {
        return this == NONE;
    }

    /** The bodies, as stated. */
    public List<Solid> solids() {
        return solids;
    }

    /** The same and one more. */
    public Displacement and(Solid another) {
        List<Solid> more = new ArrayList<>(solids);
        more.add(another);
        return of(more);
    }

    /** Section taken at a level, m2; where it steps, that above the step. */
    public double sectionM2(double levelM) {
        int layer = layerAt(levelM);
        return layer < 0 ? 0 : sectionM2[layer];
    }

    /** Volume displaced below a level, m3. */
    public double volumeM3(double levelM) {
        int layer = layerAt(levelM);
        return layer < 0 ? 0 : belowM3[layer] + sectionM2[layer] * (levelM - fromM[layer]);
    }

    // Few enough to be looked through one by one.
    private int layerAt(double levelM) {
        int layer = fromM.length - 1;
        while (layer >= 0 && levelM < fromM[layer]) {
            layer--;
        }
        return layer;
    }

    int layers() {
        return fromM.length;
    }

    double fromM(int layer) {
        return fromM[layer];
    }

    double layerSectionM2(int layer) {
        return sectionM2[layer];
    }

    double belowM3(int layer) {
        return belowM3[layer];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Displacement that && solids.equals(that.solids);
    }

    @Override
    public int hashCode() {
        return solids.hashCode();
    }

    @Override
    public String toString() {
        return "Displacement" + solids;
    }
}
