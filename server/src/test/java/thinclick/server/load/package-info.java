/** Load, attack and fault for whole servers over loopback; started by the scripts in src/bench. */
package thinclick.server.load;
