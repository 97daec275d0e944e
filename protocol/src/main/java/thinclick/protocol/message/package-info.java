/**
 * The conversation between client and server: a record a message, its limits, its codec. Called by
 * both edges.
 */
@NullMarked
package thinclick.protocol.message;

import org.jspecify.annotations.NullMarked;
