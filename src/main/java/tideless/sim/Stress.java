package tideless.sim;

/** What a root zone can take of a crop's growth. */
public enum Stress {
    /** Salt, by the strength of the solution. */
    SALT,
    /** Solution out of the roots' reach, and what wilting leaves behind. */
    WATER,
    /** Want of oxygen: drowned air roots, airless solution, too little root in air. */
    AIR,
    /** Solution too warm or too cold for the roots. */
    WARMTH,
    /** Want of a nutrient. */
    HUNGER
}
