/** The clock that is handed in. Called by everything that measures time. */
@NullMarked
package thinclick.protocol.time;

import org.jspecify.annotations.NullMarked;
