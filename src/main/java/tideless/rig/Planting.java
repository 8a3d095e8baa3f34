package tideless.rig;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import tideless.crop.CropTraits;
import tideless.crop.Growing;
import tideless.crop.Plant;
import tideless.crop.Transplant;

/** What grows in a tray. */
public sealed interface Planting {

    /** How many plants. */
    int plants();

    /** What the user calls the crop. */
    String cropName();

    /** Whether it is known as a crop that is grown for its fruit. */
    default boolean fruits() {
        return false;
    }

    /**
     * A crop of the library, or of the user's own file.
     *
     * @param traits the crop
     * @param plants how many hang in the tray
     * @param groundM2 floor area the canopy may spread over, m2; at least the deck's own area
     * @param ageAtStartDays days since sowing when it is set out; the first crop of a tray is when
     *     the run starts
     * @param transplant the young plant as the grower found it
     * @param model which transpiration model drives its thirst
     * @param harvestAfterDays days after it is set out at which it is cut or pulled; empty for the
     *     crop's own ripeness
     * @param harvestFreshG fresh weight of a plant at which a leaf crop is cut, g; empty where the
     *     stage alone decides
     * @param tending what hands do to it by date
     */
    @RecordBuilder
    record OfCrop(
            CropTraits traits,
            int plants,
            double groundM2,
            double ageAtStartDays,
            Transplant transplant,
            ThirstModel model,
            OptionalInt harvestAfterDays,
            OptionalDouble harvestFreshG,
            Tending tending)
            implements Planting, PlantingOfCropBuilder.With {
        public OfCrop {
            Objects.requireNonNull(traits, "traits");
            Objects.requireNonNull(transplant, "transplant");
            Objects.requireNonNull(model, "model");
            Objects.requireNonNull(harvestAfterDays, "harvestAfterDays");
            Objects.requireNonNull(harvestFreshG, "harvestFreshG");
            Objects.requireNonNull(tending, "tending");
            if (plants < 0 || plants > 100_000) {
                throw new IllegalArgumentException("plants must lie in 0 to 100000, was " + plants);
            }
            if (!(groundM2 > 0)) {
                throw new IllegalArgumentException("groundM2 must be above 0, was " + groundM2);
            }
        }

        /** The most floor its canopy may ever spread over, m2. */
        public double mostGroundM2() {
            return Math.max(groundM2, tending.mostGroundM2());
        }

        @Override
        public boolean fruits() {
            return traits.stages().fruits();
        }

        /** Whether it stands for the leaves that are picked from it. */
        public boolean isPickedForLeaves() {
            return tending.picksLeaves() && !fruits();
        }

        /** One of its plants when it is set out. */
        public Plant plantAtStart() {
            return Growing.atStart(traits, ageAtStartDays, transplant);
        }

        @Override
        public String cropName() {
            return traits.name();
        }
    }

    /**
     * Thirst as the grower measured it, for the whole tray. Its roots count as wet while there is
     * any solution.
     *
     * @param cropName what the grower calls it
     * @param plants how many; 0 when not stated
     * @param thirst the measured use
     */
    record MeasuredThirst(String cropName, int plants, Thirst thirst) implements Planting {
        public MeasuredThirst {
            Objects.requireNonNull(cropName, "cropName");
            Objects.requireNonNull(thirst, "thirst");
        }
    }

    /** Which transpiration model. */
    enum ThirstModel {
        /**
         * Fruit crops in the sun by the mean of {@link #PENMAN_MONTEITH} and {@link #RADIATION},
         * lamp rooms and leaf crops by {@link #CANOPY}, and between them by the sun's share of the
         * day's light.
         */
        COMBINED,
        /** Penman-Monteith summed over the leaves of a canopy, from light, air and leaf area. */
        CANOPY,
        /** Reference evapotranspiration times the crop coefficient of the stage. */
        COEFFICIENT,
        /** FAO-56's Penman-Monteith with a house's resistances and a full-cover coefficient. */
        PENMAN_MONTEITH,
        /** Radiation and leaf area alone. */
        RADIATION
    }
}
