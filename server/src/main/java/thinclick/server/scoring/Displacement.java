package thinclick.server.scoring;

/**
 * A run of bars in which a player sat off the part by whole steps.
 *
 * @param fromBar the first bar whose written attacks are displaced, from 0
 * @param toBar the first bar after
 * @param steps by how many steps, positive late
 */
public record Displacement(int fromBar, int toBar, int steps) {}
