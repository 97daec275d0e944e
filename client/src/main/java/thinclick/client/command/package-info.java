/** The client jar's commands. Called from the command line. */
@NullMarked
package thinclick.client.command;

import org.jspecify.annotations.NullMarked;
