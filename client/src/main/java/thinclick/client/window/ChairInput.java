package thinclick.client.window;

import thinclick.protocol.message.PreparingMessage.InputKind;

/**
 * Something that is tapped on at a chair.
 *
 * @param name {@link Taps#KEYS}, {@link Taps#TOUCH} or the name of a MIDI input; of further chairs
 *     with whose it is, because what was measured holds for one pair of hands
 */
record ChairInput(String name, InputKind kind) {}
