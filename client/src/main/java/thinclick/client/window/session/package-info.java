/**
 * What the window knows of a rehearsal and what it can ask for: view models without controls.
 * Called by the views and by what listens to keys; tested without a window.
 */
@NullMarked
package thinclick.client.window.session;

import org.jspecify.annotations.NullMarked;
