package thinclick.client.find;

import thinclick.client.link.RoomAddress;

/**
 * A host in the local network. Whoever wants to come in still needs a room's word; and since
 * anybody in the network can say such a thing, its certificate counts as one met by address alone.
 *
 * @param name what its operator calls it
 * @param address where it listens
 */
public record FoundHost(String name, RoomAddress address) {}
