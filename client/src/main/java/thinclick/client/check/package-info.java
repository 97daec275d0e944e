/**
 * The sound check's arithmetic: from taps, or from a recording, to a chair's delay and how far it
 * is known. Pure; called by the window.
 */
@NullMarked
package thinclick.client.check;

import org.jspecify.annotations.NullMarked;
