package thinclick.protocol.music;

/**
 * One click.
 *
 * @param step the step it sounds on, from 0 at bar 1; negative in the count-in
 * @param micros its room time
 * @param stage the index of its stage; -1 in the count-in
 * @param downbeat true on the first step of a bar
 */
public record Click(long step, long micros, int stage, boolean downbeat) {}
