/**
 * The course over weeks: takes of one drill at one tempo under one click plan, and what they make
 * due next. Pure; called by the {@code history} command.
 */
@NullMarked
package thinclick.server.history;

import org.jspecify.annotations.NullMarked;
