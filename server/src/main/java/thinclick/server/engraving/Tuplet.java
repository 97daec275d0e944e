package thinclick.server.engraving;

/**
 * Symbols that share a span in another division than the meter's.
 *
 * @param start its first step, from bar 1
 * @param length its length in steps
 * @param actual how many units are written: 3 in a triplet
 * @param normal how many would stand in the same time: 2 in a triplet
 * @param unit the value that is counted
 */
public record Tuplet(int start, int length, int actual, int normal, NoteValue unit) {}
