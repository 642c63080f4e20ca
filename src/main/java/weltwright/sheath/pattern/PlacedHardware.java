package weltwright.sheath.pattern;

import java.util.List;
import java.util.Optional;
import weltwright.sheath.hardware.Hardware;

/**
 * A rivet, snap, eyelet or ring, or a few of them alike in one place.
 *
 * @param purpose what it is for
 * @param hardware which is taken for it
 * @param layers what it holds together, from the face to the back: as many holes in each as there are of it. Of a snap
 *     each half holds its own layer alone, and so does an eyelet; through a ring they only pass, and have no holes for
 *     it.
 * @param covered whether the rivet cover is glued over its heads inside the sheath
 */
public record PlacedHardware(Purpose purpose, Hardware hardware, List<Seam.Layer> layers, boolean covered) {

    public PlacedHardware {
        layers = List.copyOf(layers);
    }

    /** One that nothing is glued over. */
    public PlacedHardware(Purpose purpose, Hardware hardware, List<Seam.Layer> layers) {
        this(purpose, hardware, layers, false);
    }

    /** What hardware in a sheath is for; a pattern has at most one of each. */
    public enum Purpose {
        BELT_STRAP_RIVETS("belt strap rivets"),
        RING_STRAP_RIVETS("ring strap rivets"),
        RING("ring"),
        HANDLE_STRAP_RIVET("handle strap rivet"),
        HANDLE_STRAP_SNAP("handle strap snap"),
        DRAIN_EYELETS("drain eyelets");

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

    /** Of a snap on one strap, the half whose place is found on the knife: that on the outermost arm. */
    public Optional<Seam.Layer> setOnTheKnife() {
        return kind() == Hardware.Kind.SNAP && layers.size() > 1 ? Optional.of(layers.get(0)) : Optional.empty();
    }

    /** What it does. */
    public Hardware.Kind kind() {
        return hardware.kind();
    }

    /** How many of it are needed. */
    public int count() {
        return kind() == Hardware.Kind.EYELET
                ? layers.stream().mapToInt(layer -> layer.holes().size()).sum()
                : Math.max(1, layers.get(0).holes().size());
    }

    /**
     * The thickness that one of it has to go through: of a snap or eyelet, the thickest of the layers that they are set
     * in.
     */
    public double stackMm() {
        return switch (kind()) {
            case RIVET, RING ->
                layers.stream().mapToDouble(Seam.Layer::thicknessMm).sum();
            case SNAP, EYELET ->
                layers.stream().mapToDouble(Seam.Layer::thicknessMm).max().orElseThrow();
        };
    }
}
