/**
 * A class over its weeks: who is in it and sits where, at which level and rung each stands, what a
 * thinner click would do, and what the next deal should give to whom. Pure: takes with their
 * reviews in, words, pictures and figures out. Called by the host's class book, by commands and by
 * the window.
 */
@NullMarked
package thinclick.server.season;

import org.jspecify.annotations.NullMarked;
