/** What a take was worth, first in sentences, then in figures. Called by the window's shell. */
@NullMarked
package thinclick.client.window.review;

import org.jspecify.annotations.NullMarked;
