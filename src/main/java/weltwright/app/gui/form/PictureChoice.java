package weltwright.app.gui.form;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Component;
import java.awt.Dimension;
import java.awt.FontMetrics;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.event.ComponentAdapter;
import java.awt.event.ComponentEvent;
import java.awt.event.MouseEvent;
import java.awt.geom.AffineTransform;
import java.awt.geom.Line2D;
import java.awt.geom.RoundRectangle2D;
import java.awt.image.BufferedImage;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import javax.swing.DefaultListModel;
import javax.swing.DefaultListSelectionModel;
import javax.swing.JLabel;
import javax.swing.JList;
import javax.swing.ListCellRenderer;
import javax.swing.ListSelectionModel;
import javax.swing.UIManager;
import org.jspecify.annotations.Nullable;
import weltwright.app.gui.theme.ThemeColors;

/**
 * A choice among pictures in rows, each over its label, by mouse or arrow keys. One is always selected. A picture that
 * is not there yet leaves its place empty; a value that cannot be chosen as things stand is crossed out, and says why
 * as its tool tip, but stays selectable, as the other choices of the form may change.
 *
 * @param <T> value, compared by {@code equals}
 */
public final class PictureChoice<T> extends JList<ComboBoxItem<T>> {
    // In px at 96 dpi, chosen by eye.
    private static final int PADDING_PX = 6;
    private static final int LEAST_LABEL_LINES = 2;
    private static final int MOST_LABEL_LINES = 3;
    private static final float CORNER_PX = 6;
    private static final int LEAST_CELL_PX = 40;
    private static final float SELECTED_PX = 2;
    private static final float CROSS_PX = 24;

    private final int columns;
    private final int picturePx;
    private final transient List<ComboBoxItem<T>> choices;
    private transient Map<T, Picture> pictures = Map.of();
    private transient Runnable paintListener = () -> {};

    /**
     * The picture of a value.
     *
     * @param image as large as the choice asks for; empty where the value cannot be chosen
     * @param refusal why it cannot be chosen, for the user; else empty
     */
    public record Picture(Optional<BufferedImage> image, String refusal) {}

    /**
     * @param name of the component
     * @param columns number of pictures in a row
     * @param picturePx width and height of a picture at 96 dpi
     */
    public PictureChoice(String name, int columns, int picturePx, List<ComboBoxItem<T>> items) {
        this.columns = columns;
        this.picturePx = picturePx;
        choices = List.copyOf(items);
        DefaultListModel<ComboBoxItem<T>> listed = new DefaultListModel<>();
        listed.addAll(items);
        setModel(listed);
        setName(name);
        setSelectionModel(new OneAlwaysSelected());
        setSelectedIndex(0);
        setLayoutOrientation(HORIZONTAL_WRAP);
        setVisibleRowCount(rows());
        setOpaque(false);
        setCellRenderer(new Renderer());
        addComponentListener(new ComponentAdapter() {
            @Override
            public void componentResized(ComponentEvent e) {
                fitCells();
            }
        });
        fitCells();
    }

    /** Returns the selected value. */
    public T value() {
        return getSelectedValue().value();
    }

    /** Selects a value, which must be one of the items. */
    public void select(T value) {
        for (int i = 0; i < choices.size(); i++) {
            if (choices.get(i).value().equals(value) && i != getSelectedIndex()) {
                setSelectedIndex(i);
            }
        }
    }

    /** Returns the label of a value with a lower-case first letter, for the middle of a sentence. */
    public String lowerCaseLabelOf(T value) {
        return choices.stream()
                .filter(item -> item.value().equals(value))
                .findFirst()
                .orElseThrow()
                .lowerCaseLabel();
    }

    /** Adds a listener that receives the value whenever another was selected. */
    public void onSelection(Consumer<T> listener) {
        addListSelectionListener(e -> {
            if (!e.getValueIsAdjusting()) {
                listener.accept(value());
            }
        });
    }

    /** Returns all values. */
    List<T> values() {
        return choices.stream().map(ComboBoxItem::value).toList();
    }

    /** Returns the width and height of a picture in px of the present scaling. */
    int scaledPicturePx() {
        return UIScale.scale(picturePx);
    }

    /** Sets what is called whenever any of the choice is painted, and so seen. */
    void onPaint(Runnable listener) {
        paintListener = listener;
    }

    @Override
    protected void paintComponent(Graphics g) {
        paintListener.run();
        super.paintComponent(g);
    }

    /** Sets the pictures, those of values without one stay empty. */
    void setPictures(Map<T, Picture> newPictures) {
        pictures = newPictures;
        repaint();
    }

    Map<T, Picture> pictures() {
        return pictures;
    }

    private int rows() {
        return (choices.size() + columns - 1) / columns;
    }

    private int rowHeight() {
        return scaledPicturePx()
                + labelLines() * getFontMetrics(UIManager.getFont("small.font")).getHeight()
                + 2 * UIScale.scale(PADDING_PX);
    }

    /** Returns how many lines the longest label takes. */
    private int labelLines() {
        FontMetrics metrics = getFontMetrics(UIManager.getFont("small.font"));
        int width = cellWidth() - UIScale.scale(PADDING_PX);
        int lines = choices.stream()
                .mapToInt(choice -> lines(choice.label(), metrics, width).size())
                .max()
                .orElse(0);
        return Math.max(LEAST_LABEL_LINES, lines);
    }

    private int cellWidth() {
        int width = getWidth() > 0 ? getWidth() : preferredWidth();
        return Math.max(UIScale.scale(LEAST_CELL_PX), width / columns);
    }

    private int preferredWidth() {
        return columns * (scaledPicturePx() + UIScale.scale(PADDING_PX));
    }

    /** Breaks a label at its spaces; what does not fit into the last line is cut off with an ellipsis. */
    private static List<String> lines(String label, FontMetrics metrics, int width) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : label.split(" ", -1)) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (line.isEmpty() || metrics.stringWidth(longer) <= width) {
                line = longer;
            } else if (lines.size() + 1 < MOST_LABEL_LINES) {
                lines.add(line);
                line = word;
            } else {
                lines.add(line + "…");
                return lines;
            }
        }
        lines.add(line);
        return lines;
    }

    private void fitCells() {
        setFixedCellWidth(cellWidth());
        setFixedCellHeight(rowHeight());
    }

    @Override
    public void updateUI() {
        super.updateUI();
        if (choices != null) {
            setOpaque(false);
            fitCells();
        }
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(preferredWidth(), rows() * rowHeight());
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(columns * UIScale.scale(LEAST_CELL_PX), rows() * rowHeight());
    }

    @Override
    public @Nullable String getToolTipText(MouseEvent event) {
        int index = locationToIndex(event.getPoint());
        return Optional.ofNullable(
                        index < 0 ? null : pictures.get(choices.get(index).value()))
                .map(Picture::refusal)
                .filter(refusal -> !refusal.isEmpty())
                .orElse(getToolTipText());
    }

    /** Keeps the selection where a list would clear it, as on a click with Ctrl. */
    private static final class OneAlwaysSelected extends DefaultListSelectionModel {
        OneAlwaysSelected() {
            setSelectionMode(ListSelectionModel.SINGLE_SELECTION);
        }

        @Override
        public void removeSelectionInterval(int from, int to) {}

        @Override
        public void clearSelection() {}
    }

    private final class Renderer extends JLabel implements ListCellRenderer<ComboBoxItem<T>> {
        private transient Optional<Picture> picture = Optional.empty();
        private boolean selected;
        private boolean focused;

        @Override
        public Component getListCellRendererComponent(
                JList<? extends ComboBoxItem<T>> list,
                ComboBoxItem<T> item,
                int index,
                boolean isSelected,
                boolean hasFocus) {
            setText(item.label());
            setFont(UIManager.getFont("small.font"));
            picture = Optional.ofNullable(pictures.get(item.value()));
            selected = isSelected;
            focused = hasFocus;
            getAccessibleContext()
                    .setAccessibleDescription(picture.map(Picture::refusal).orElse(""));
            return this;
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            Graphics2D g = (Graphics2D) graphics.create();
            g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
            g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
            paintFrame(g);
            int size = Math.min(scaledPicturePx(), getWidth() - UIScale.scale(PADDING_PX));
            double left = (getWidth() - size) / 2.0;
            double top = UIScale.scale(PADDING_PX);
            picture.ifPresent(shown -> paintPicture(g, shown, left, top, size));
            paintLabel(g, top + scaledPicturePx());
            g.dispose();
        }

        private void paintFrame(Graphics2D g) {
            float width = UIScale.scale(SELECTED_PX);
            float corner = 2 * UIScale.scale(CORNER_PX);
            var frame = new RoundRectangle2D.Double(
                    width, width, getWidth() - 2 * width, getHeight() - 2 * width, corner, corner);
            if (selected) {
                g.setColor(ThemeColors.canvas());
                g.fill(frame);
                g.setColor(UIManager.getColor("Component.accentColor"));
                g.setStroke(new BasicStroke(width));
                g.draw(frame);
            }
            if (focused) {
                g.setColor(UIManager.getColor("Component.focusColor"));
                g.setStroke(new BasicStroke(2 * width));
                g.draw(frame);
            }
        }

        private void paintPicture(Graphics2D g, Picture shown, double left, double top, int size) {
            shown.image().ifPresent(image -> {
                g.setRenderingHint(RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
                double scale = (double) size / image.getWidth();
                g.drawImage(image, new AffineTransform(scale, 0, 0, scale, left, top), null);
            });
            if (shown.image().isEmpty()) {
                double arm = UIScale.scale(CROSS_PX) / 2;
                double x = left + size / 2.0;
                double y = top + size / 2.0;
                Color quiet = ThemeColors.secondaryText();
                g.setColor(quiet);
                g.setStroke(new BasicStroke(UIScale.scale(SELECTED_PX)));
                g.draw(new Line2D.Double(x - arm, y - arm, x + arm, y + arm));
                g.draw(new Line2D.Double(x - arm, y + arm, x + arm, y - arm));
            }
        }

        private void paintLabel(Graphics2D g, double top) {
            g.setFont(getFont());
            g.setColor(ThemeColors.text());
            FontMetrics metrics = g.getFontMetrics();
            double baseline = top + metrics.getAscent();
            for (String line : lines(getText(), metrics, getWidth() - UIScale.scale(PADDING_PX))) {
                g.drawString(line, (float) ((getWidth() - metrics.stringWidth(line)) / 2.0), (float) baseline);
                baseline += metrics.getHeight();
            }
        }
    }
}
