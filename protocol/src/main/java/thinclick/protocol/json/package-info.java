/**
 * The one strict JSON setting and the translation of its errors into one line. Called by the file
 * and message packages.
 */
@NullMarked
package thinclick.protocol.json;

import org.jspecify.annotations.NullMarked;
