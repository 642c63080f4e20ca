package weltwright.app.gui.outline;

import java.awt.AlphaComposite;
import java.awt.Graphics2D;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/** How opaque each layer of the outline's drawing is. */
final class LayerOpacity {
    private final Map<Layer, Double> shares = new EnumMap<>(Layer.class);

    /** A layer, from the lowest up. */
    enum Layer {
        PHOTO,
        OUTLINE,
        DIMENSIONS
    }

    LayerOpacity() {
        for (Layer layer : Layer.values()) {
            shares.put(layer, 1.0);
        }
    }

    /** @param share from 0, invisible, to 1 */
    void set(Layer layer, double share) {
        shares.put(layer, Math.max(0, Math.min(1, share)));
    }

    double of(Layer layer) {
        return Objects.requireNonNull(shares.get(layer));
    }

    /** Returns a copy of the graphics that paints this layer; to be disposed of. */
    Graphics2D on(Graphics2D g, Layer layer) {
        Graphics2D layered = (Graphics2D) g.create();
        if (of(layer) < 1) {
            layered.setComposite(AlphaComposite.getInstance(AlphaComposite.SRC_OVER, (float) of(layer)));
        }
        return layered;
    }
}
