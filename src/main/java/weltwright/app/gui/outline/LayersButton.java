package weltwright.app.gui.outline;

import javax.swing.JButton;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JPopupMenu;
import javax.swing.JSlider;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.ToolIcons;
import weltwright.message.Messages;

/** A button that opens sliders for the opacity of each layer of the outline's drawing. */
final class LayersButton extends JButton {
    private static final Messages TEXTS = Messages.of(LayersButton.class);
    private static final int PERCENT = 100;

    /** @param changed called whenever an opacity was changed */
    LayersButton(LayerOpacity opacity, Runnable changed) {
        super(TEXTS.text("layers"));
        setName("layers");
        setToolTipText(TEXTS.text("layers.tip"));
        ToolIcons.replaceText(this, "layers");
        addActionListener(e -> {
            JPopupMenu popup = new JPopupMenu();
            popup.add(sliders(opacity, changed));
            popup.show(this, 0, getHeight());
        });
    }

    private static JPanel sliders(LayerOpacity opacity, Runnable changed) {
        JPanel panel = new JPanel(new MigLayout("insets 8 12 8 12, wrap 2, gap 8", "[][180!]"));
        for (LayerOpacity.Layer layer : LayerOpacity.Layer.values()) {
            JLabel label = new JLabel(TEXTS.text("layer." + layer.name()));
            JSlider slider = new JSlider(0, PERCENT, (int) Math.round(PERCENT * opacity.of(layer)));
            slider.setName("opacity " + layer.name());
            slider.getAccessibleContext().setAccessibleName(label.getText());
            label.setLabelFor(slider);
            slider.addChangeListener(e -> {
                opacity.set(layer, (double) slider.getValue() / PERCENT);
                changed.run();
            });
            panel.add(label);
            panel.add(slider);
        }
        return panel;
    }
}
