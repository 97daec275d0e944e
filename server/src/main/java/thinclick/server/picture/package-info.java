/**
 * Pictures of a review: what stands where, as lines, discs and words in a flat drawing. Pure; the
 * export package writes a drawing to a file.
 */
@NullMarked
package thinclick.server.picture;

import org.jspecify.annotations.NullMarked;
