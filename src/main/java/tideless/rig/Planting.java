package tideless.rig;

import java.util.Objects;
import java.util.OptionalInt;
import tideless.crop.CropTraits;

/** What grows in a tray. */
public sealed interface Planting {

    /** How many plants. */
    int plants();

    /** What the user calls the crop. */
    String cropName();

    /**
     * A crop of the library, or of the user's own file.
     *
     * @param traits the crop
     * @param plants how many hang in the tray
     * @param groundM2 floor area the canopy may spread over, m2; at least the deck's own area
     * @param ageAtStartDays days since sowing when the run starts
     * @param model which transpiration model drives its thirst
     * @param harvestAfterDays days after the start at which it is cut or pulled; empty for the
     *     crop's own ripeness
     */
    record OfCrop(
            CropTraits traits,
            int plants,
            double groundM2,
            double ageAtStartDays,
            ThirstModel model,
            OptionalInt harvestAfterDays)
            implements Planting {
        public OfCrop {
            Objects.requireNonNull(traits, "traits");
            Objects.requireNonNull(model, "model");
            Objects.requireNonNull(harvestAfterDays, "harvestAfterDays");
            if (plants < 0 || plants > 100_000) {
                throw new IllegalArgumentException("plants must lie in 0 to 100000, was " + plants);
            }
            if (!(groundM2 > 0)) {
                throw new IllegalArgumentException("groundM2 must be above 0, was " + groundM2);
            }
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
        /** Big-leaf Penman-Monteith from light, air and leaf area. */
        CANOPY,
        /** Reference evapotranspiration times the crop coefficient of the stage. */
        COEFFICIENT
    }
}
