/**
 * The player's page: the dealt part, the bar that sounds, the marks of bars that are over. Called
 * by the window's shell.
 */
@NullMarked
package thinclick.client.window.stand;

import org.jspecify.annotations.NullMarked;
