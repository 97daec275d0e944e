/**
 * Musical time as types: meter, step grid, swing, stages, click plan, clicks. Pure values; every
 * module calls them.
 */
@NullMarked
package thinclick.protocol.music;

import org.jspecify.annotations.NullMarked;
