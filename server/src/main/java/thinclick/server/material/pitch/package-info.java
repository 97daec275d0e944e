/**
 * Pitch as it is written and as it sounds: letters and accidentals, keys, scales, chords,
 * progressions, instruments. Pure; called by the material, the pages and the exports.
 */
@NullMarked
package thinclick.server.material.pitch;

import org.jspecify.annotations.NullMarked;
