/**
 * Practising alone: which drill, which chair, with which stand-ins. Called by the window's desk.
 */
@NullMarked
package thinclick.client.window.practice;

import org.jspecify.annotations.NullMarked;
