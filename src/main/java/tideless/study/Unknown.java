package tideless.study;

import java.util.Objects;

/**
 * Something nobody knows of a rig before it runs.
 *
 * @param kind what
 * @param of the crop or the tray it is about; empty where it is the whole rig
 */
record Unknown(Kind kind, String of) {

    /**
     * Kinds of unknown, with how far each lies off: a standard deviation, of the logarithm where a
     * share is meant. Where no source is named the figure is assumed.
     */
    public enum Kind {
        /** A stand's own factor on its thirst; see {@link tideless.crop.ThirstDoubt}. */
        THIRST,
        /** Weeks and days of more or less thirst than the air explains; likewise. */
        DAYS,
        /** Light use of a crop, by the range its file states. */
        GROWTH,
        /** Leaf area per leaf mass of a crop, likewise. */
        LEAF,
        /** Nutrients in the tissue of a crop, likewise, nitrogen's range for all. */
        CONTENTS,
        /** How fast roots of a crop go down, likewise. */
        ROOTS,
        /** The air is warmer or colder throughout, K. */
        WARMTH,
        /** The room is drier or damper throughout, points of relative humidity over 100. */
        HUMIDITY,
        /** Lamps and sun give more or less light than stated. */
        LIGHT,
        /** The feed is mixed stronger or weaker. */
        FEED,
        /** The meter shows too much or too little. */
        METER,
        /** The float valve of a tray shuts higher or lower than stated, m. */
        VALVE,
        /** The gaps of the decks are wider or narrower. */
        GAPS,
        /** Which of the years of a weather file it will be. */
        YEAR,
        /** Visits do not take place. */
        VISITS
    }

    public Unknown {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(of, "of");
    }
}
