/**
 * What a review says in words: findings drawn from figures by rules, ordered by what matters to the
 * next try, and said in a language. Pure; called by the commands, by rooms and by the client.
 */
@NullMarked
package thinclick.server.words;

import org.jspecify.annotations.NullMarked;
