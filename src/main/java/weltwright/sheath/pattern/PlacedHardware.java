package weltwright.sheath.pattern;

import java.util.List;
import java.util.Optional;
import weltwright.message.Messages;
import weltwright.sheath.hardware.Hardware;

/**
 * One or several rivets, snaps, eyelets or rings of one kind in one place of a sheath.
 *
 * @param purpose what it is for
 * @param hardware the hardware used
 * @param layers the layers held together, from the face to the back, each with one hole for each item. A half of a snap
 *     and an eyelet hold one layer only; layers pass through a ring without holes.
 * @param covered whether the rivet cover is glued over its heads inside the sheath
 */
public record PlacedHardware(Purpose purpose, Hardware hardware, List<Seam.Layer> layers, boolean covered) {
    private static final Messages TEXTS = Messages.of(PlacedHardware.class);

    public PlacedHardware {
        layers = List.copyOf(layers);
    }

    /** Hardware that nothing is glued over. */
    public PlacedHardware(Purpose purpose, Hardware hardware, List<Seam.Layer> layers) {
        this(purpose, hardware, layers, false);
    }

    /** What hardware in a sheath is for; a pattern has at most one of each. */
    public enum Purpose {
        BELT_STRAP_RIVETS(TEXTS.text("placed-hardware.belt-strap-rivets")),
        RING_STRAP_RIVETS(TEXTS.text("placed-hardware.ring-strap-rivets")),
        RING(TEXTS.text("placed-hardware.ring")),
        HANDLE_STRAP_RIVET(TEXTS.text("placed-hardware.handle-strap-rivet")),
        HANDLE_STRAP_SNAP(TEXTS.text("placed-hardware.handle-strap-snap")),
        DRAIN_EYELETS(TEXTS.text("placed-hardware.drain-eyelets"));

        private final String words;

        Purpose(String words) {
            this.words = words;
        }

        /** What the maker calls it. */
        public String words() {
            return words;
        }
    }

    /** What the maker calls it. */
    public String name() {
        return purpose.words();
    }

    public PlacedHardware withCover() {
        return new PlacedHardware(purpose, hardware, layers, true);
    }

    /**
     * Returns the layer of a snap whose half is set where it meets the other with the knife in the sheath; empty for
     * other hardware.
     */
    public Optional<Seam.Layer> setOnTheKnife() {
        return kind() == Hardware.Kind.SNAP && layers.size() > 1 ? Optional.of(layers.get(0)) : Optional.empty();
    }

    /** Returns the kind of the hardware. */
    public Hardware.Kind kind() {
        return hardware.kind();
    }

    /** Returns the number of items needed. */
    public int count() {
        return kind() == Hardware.Kind.EYELET
                ? layers.stream().mapToInt(layer -> layer.holes().size()).sum()
                : Math.max(1, layers.get(0).holes().size());
    }

    /** Returns the thickness that one item goes through; of a snap or eyelet that of the thickest layer. */
    public double stackMm() {
        return switch (kind()) {
            case RIVET, RING ->
                layers.stream().mapToDouble(Seam.Layer::thicknessMm).sum();
            case SNAP, EYELET ->
                layers.stream().mapToDouble(Seam.Layer::thicknessMm).max().orElseThrow();
        };
    }
}
