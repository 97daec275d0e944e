/** Files written whole or not at all. Called by the commands of both jars. */
@NullMarked
package thinclick.protocol.disk;

import org.jspecify.annotations.NullMarked;
