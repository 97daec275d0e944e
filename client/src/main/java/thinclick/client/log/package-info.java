/**
 * What a window writes down of itself on this computer: its log, and what nobody foresaw. Nothing
 * is sent.
 */
@NullMarked
package thinclick.client.log;

import org.jspecify.annotations.NullMarked;
