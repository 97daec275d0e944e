/**
 * The sound check's page: which output, which input, forty clicks to tap along with, what came of
 * it. Called by the window's desk.
 */
@NullMarked
package thinclick.client.window.check;

import org.jspecify.annotations.NullMarked;
