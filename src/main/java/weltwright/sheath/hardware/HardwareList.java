package weltwright.sheath.hardware;

import static weltwright.sheath.hardware.Hardware.Kind.EYELET;
import static weltwright.sheath.hardware.Hardware.Kind.RIVET;
import static weltwright.sheath.hardware.Hardware.Kind.SNAP;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import weltwright.error.UserFacingException;
import weltwright.message.Messages;

/**
 * The rivets, snaps, eyelets and rings that a maker has at hand, from which those of a sheath are chosen.
 *
 * @param fasteners of all kinds, in order of preference
 * @param rings in order of preference
 */
public record HardwareList(List<Fastener> fasteners, List<Ring> rings) {
    private static final Messages TEXTS = Messages.of(HardwareList.class);

    /** Usual sizes of the trade, from memory. */
    public static final HardwareList USUAL = new HardwareList(
            List.of(
                    new Fastener("double-cap rivet, 7 mm, short post", RIVET, 2.8, 7, 2.5, 4),
                    new Fastener("double-cap rivet, 9 mm, short post", RIVET, 3.1, 9, 3, 5),
                    new Fastener("double-cap rivet, 9 mm, medium post", RIVET, 3.1, 9, 5, 7),
                    new Fastener("double-cap rivet, 9 mm, long post", RIVET, 3.1, 9, 7, 9.5),
                    new Fastener("copper rivet with burr, no. 12", RIVET, 2.8, 8, 3, 9),
                    new Fastener("copper rivet with burr, no. 9", RIVET, 3.8, 10.5, 4, 14),
                    new Fastener("screw post, 5 mm", RIVET, 5, 10, 5, 7),
                    new Fastener("screw post, 8 mm", RIVET, 5, 10, 8, 10),
                    new Fastener("snap, line 20", SNAP, 3.4, 12.5, 1.2, 2.6),
                    new Fastener("snap, line 24", SNAP, 3.9, 15, 1.6, 3.4),
                    new Fastener("snap, line 24, long post", SNAP, 3.9, 15, 3, 5),
                    new Fastener("eyelet, 5 mm", EYELET, 4.9, 8.5, 1.5, 3),
                    new Fastener("eyelet, 6 mm", EYELET, 6.4, 11, 2, 3.5)),
            List.of(
                    new Ring("ring for a strap of 16 mm (5/8 in)", 17, 3),
                    new Ring("ring for a strap of 20 mm (3/4 in)", 21, 3.5),
                    new Ring("ring for a strap of 25 mm (1 in)", 26, 4),
                    new Ring("ring for a strap of 32 mm (1 1/4 in)", 33, 4.5)));

    public HardwareList {
        fasteners = List.copyOf(fasteners);
        rings = List.copyOf(rings);
    }

    /**
     * Returns the fastener for leather of a thickness: the first of its kind that grips it, else the one nearest to
     * that. Throws {@link UserFacingException} where the list has none of the kind.
     */
    public Fastener fastener(Hardware.Kind kind, double stackMm) {
        return fasteners.stream()
                .filter(fastener -> fastener.kind() == kind)
                .min(Comparator.comparingDouble(
                        fastener -> fastener.grips(stackMm) ? 0 : fastener.besideGripMm(stackMm)))
                .orElseThrow(() -> none(kind));
    }

    /** Returns the narrowest ring for a strap. Throws {@link UserFacingException} where there is none. */
    public Ring ringFor(double strapMm) {
        return rings.stream()
                .filter(ring -> ring.takes(strapMm))
                .min(Comparator.comparingDouble(Ring::insideMm))
                .orElseThrow(() -> none(Hardware.Kind.RING));
    }

    private static UserFacingException none(Hardware.Kind kind) {
        return new UserFacingException(
                TEXTS.text("hardware-list.none." + kind.name().toLowerCase(Locale.ROOT)),
                TEXTS.text("hardware-list.put-one-on-the-list"));
    }
}
