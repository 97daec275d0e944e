/** What the window says, by key, in the reader's language. Called by view models and views. */
@NullMarked
package thinclick.client.window.words;

import org.jspecify.annotations.NullMarked;
