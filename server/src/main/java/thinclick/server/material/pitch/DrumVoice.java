package thinclick.server.material.pitch;

/**
 * One voice of a kit or a hand percussion.
 *
 * @param name such as {@code "ride"}
 * @param key its General MIDI percussion key, 35 to 81
 * @param staffStep its place on a five-line staff, letters above the middle line: 4 is the top
 *     line, -3 the lowest space; common practice, no source
 * @param cross true for a cross as notehead (cymbals)
 */
public record DrumVoice(String name, int key, int staffStep, boolean cross) {}
