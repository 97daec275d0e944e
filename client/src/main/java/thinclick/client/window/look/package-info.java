/**
 * How everything looks: the paper-and-ink palette, the faces, the stylesheet made from them. Called
 * by every view; knows none of them.
 */
@NullMarked
package thinclick.client.window.look;

import org.jspecify.annotations.NullMarked;
