/** The help page: the walks and the cautions, the same text as in the README. */
@NullMarked
package thinclick.client.window.help;

import org.jspecify.annotations.NullMarked;
