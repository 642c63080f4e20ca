package weltwright.app.gui.upload;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The addresses at which other devices on the networks of this computer may reach it. */
final class NetworkAddresses {
    private NetworkAddresses() {}

    /** Returns all but loopback and link-local addresses, those of private IPv4 networks first (RFC 1918). */
    static List<InetAddress> find() {
        List<InetAddress> found = new ArrayList<>();
        try {
            NetworkInterface.networkInterfaces()
                    .filter(NetworkAddresses::isUsable)
                    .flatMap(NetworkInterface::inetAddresses)
                    .filter(address -> !address.isLoopbackAddress()
                            && !address.isLinkLocalAddress()
                            && !address.isMulticastAddress())
                    .forEach(found::add);
        } catch (SocketException e) {
            return List.of(); // there is no network
        }
        found.sort(Comparator.comparing((InetAddress address) -> !(address instanceof Inet4Address))
                .thenComparing(address -> !address.isSiteLocalAddress()));
        return found;
    }

    private static boolean isUsable(NetworkInterface each) {
        try {
            return each.isUp() && !each.isLoopback() && !each.isPointToPoint();
        } catch (SocketException e) {
            return false;
        }
    }
}
