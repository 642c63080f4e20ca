package weltwright.sheath;

import java.util.List;

/**
 * A rivet, snap or ring, or a few of them alike in one place.
 *
 * @param name what it is for: "belt strap rivets", "strap snap"
 * @param kind what it is
 * @param layers what it holds together, from the face to the back: as many holes in each as there are of it. Of a snap each half
 *     holds its own layer alone; through a ring they only pass, and have no holes for it.
 * @param widthMm inside, of a ring; else 0
 */
public record Fastening(String name, Kind kind, List<Seam.Layer> layers, double widthMm) {

    public Fastening {
        layers = List.copyOf(layers);
    }

    /** What holds leather together without thread. */
    public enum Kind {
        RIVET,
        SNAP,
        RING
    }

    /** How many of it are needed. */
    public int count() {
        return Math.max(1, layers.get(0).holes().size());
    }

    /** Of all the leather that it holds together. */
    public double stackMm() {
        return layers.stream().mapToDouble(Seam.Layer::thicknessMm).sum();
    }
}
