package thinclick.server.scoring;

import org.jspecify.annotations.Nullable;

/**
 * A take decoded: who sat where, and the pulse they shared.
 *
 * @param readings one a chair, in the order of the parts
 * @param places where steps lie, swing and followed tempo laid in
 * @param pulse the joint smoothing; null where fewer than two chairs were heard, whose only
 *     reference is the click
 * @param swing the ensemble's ratio, measured
 */
@SuppressWarnings("ArrayRecordComponent") // columns of numbers, never compared or changed
record Understanding(
    Sheet sheet, Reading[] readings, Places places, @Nullable Pulse pulse, double swing) {

  /** The pulse at a step, ms from step 0; for a single player the written grid. */
  double pulseMillis(int step) {
    return pulse == null ? sheet.nominalMillis(step) : places.at(step) + pulse.at(step);
  }
}
