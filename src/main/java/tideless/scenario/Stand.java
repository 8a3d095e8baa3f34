package tideless.scenario;

/**
 * How many plants stand on how much ground.
 *
 * @param plants how many
 * @param groundM2 floor their canopy may spread over, m2
 */
record Stand(int plants, double groundM2) {}
