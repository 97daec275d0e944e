/** The leader's page: who is here, the material, the take. Called by the window's shell. */
@NullMarked
package thinclick.client.window.lectern;

import org.jspecify.annotations.NullMarked;
