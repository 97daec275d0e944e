/** What this computer remembers from one session to the next. Called by the window's start. */
@NullMarked
package thinclick.client.window.settings;

import org.jspecify.annotations.NullMarked;
