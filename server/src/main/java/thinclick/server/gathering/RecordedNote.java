package thinclick.server.gathering;

import org.jspecify.annotations.Nullable;

/**
 * One note of a recording.
 *
 * @param micros when it began, from the start of its file, tempo changes counted in
 * @param lengthMicros how long it was held; null where the file never ends it
 * @param channel its channel, from 1
 * @param pitch MIDI note number 0-127
 * @param velocity 1-127
 */
public record RecordedNote(
    long micros, @Nullable Long lengthMicros, int channel, int pitch, int velocity) {}
