package thinclick.server.scoring;

/**
 * What the decoder of a player takes for granted.
 *
 * @param noise SD of an attack about its phase, ms
 * @param drop probability that a written attack is not played
 * @param addedPerMilli additions a millisecond
 * @param jumpAtBar probability of a jump over a bar line between two written attacks
 * @param jumpElsewhere the same within a bar
 * @param startDisplaced probability to begin displaced
 * @param startSpread SD of the first phase about the centre, ms
 * @param startMean its mean, ms
 * @param walkPerStep SD of the phase's walk, ms per square root of a step
 * @param silentDrift SD of the drift in silence, as a share of the tempo
 * @param reach half the window of phases, ms
 * @param clickPulls true where clicks draw the phase home
 */
record Prices(
    double noise,
    double drop,
    double addedPerMilli,
    double jumpAtBar,
    double jumpElsewhere,
    double startDisplaced,
    double startSpread,
    double startMean,
    double walkPerStep,
    double silentDrift,
    double reach,
    boolean clickPulls) {}
