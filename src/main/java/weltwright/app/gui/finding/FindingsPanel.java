package weltwright.app.gui.finding;

import com.formdev.flatlaf.util.UIScale;
import java.awt.BorderLayout;
import java.awt.Component;
import java.awt.Container;
import java.awt.Cursor;
import java.awt.Dimension;
import java.awt.LayoutManager;
import java.awt.Rectangle;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.BorderFactory;
import javax.swing.JButton;
import javax.swing.JComponent;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.JScrollPane;
import javax.swing.JToggleButton;
import javax.swing.Scrollable;
import javax.swing.UIManager;
import net.miginfocom.swing.MigLayout;
import weltwright.app.gui.theme.StateIcon;
import weltwright.app.gui.theme.ThemeColors;
import weltwright.app.gui.widget.TradeTerms;
import weltwright.app.gui.widget.WrappedText;
import weltwright.app.gui.widget.WrappedTextLayout;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Severity;

/**
 * The list of findings at the foot of a drawing: one line with their numbers and the first of them, which opens to the
 * whole list. A click on a finding shows its place; the button at its right mends it.
 */
public final class FindingsPanel extends JPanel {
    private static final Messages TEXTS = Messages.of(FindingsPanel.class);
    private static final int LINE_PX = 28;

    /** The open list takes this part of the height; chosen by eye. */
    private static final double OPEN_SHARE = 1 / 3.0;

    private final transient FindingList findings;
    private final JToggleButton toggle = new JToggleButton(TEXTS.text("title"));
    private final Map<Severity, JLabel> counts = new EnumMap<>(Severity.class);
    private final JLabel first = new JLabel();
    private final Rows rows = new Rows();
    private final JScrollPane scroll = new JScrollPane(rows);
    private transient List<Row> shown = List.of();

    /** What a row shows; compared, so that rows are only made anew where that has changed. */
    private record Row(Severity severity, String text, String remedy) {}

    private FindingsPanel(FindingList findings) {
        super(new BorderLayout());
        this.findings = findings;
        setName("findings");
        JPanel line = new JPanel(new MigLayout("insets 0 8 0 8, gap 12, filly", "[][][][][grow,fill]"));
        toggle.setName("open findings");
        toggle.putClientProperty("JButton.buttonType", "borderless");
        toggle.putClientProperty("FlatLaf.style", "margin: 1,4,1,4; toolbar.selectedBackground: null");
        toggle.setToolTipText(TEXTS.text("open"));
        toggle.addActionListener(e -> findings.setOpen(toggle.isSelected()));
        line.add(toggle);
        for (Severity severity : Severity.values()) {
            JLabel count = new JLabel(sign(severity));
            counts.put(severity, count);
            line.add(count);
        }
        first.setEnabled(false);
        line.add(first, "wmin 0");
        scroll.setBorder(BorderFactory.createEmptyBorder());
        scroll.setHorizontalScrollBarPolicy(JScrollPane.HORIZONTAL_SCROLLBAR_NEVER);
        add(line, BorderLayout.NORTH);
        add(scroll, BorderLayout.CENTER);
        findings.addListener(this::update);
        update();
    }

    /** Returns a panel with a drawing and the list at its foot. */
    public static JPanel beneath(JComponent drawing, FindingList findings) {
        FindingsPanel list = new FindingsPanel(findings);
        JPanel both = new JPanel(new AtFoot(drawing, list));
        both.add(drawing);
        both.add(list);
        return both;
    }

    private void update() {
        boolean open = findings.isOpen();
        boolean turned = scroll.isVisible() != open;
        toggle.setSelected(open);
        toggle.setIcon(UIManager.getIcon(open ? "Tree.expandedIcon" : "Tree.collapsedIcon"));
        List<Finding> all = findings.all();
        counts.forEach((severity, label) -> {
            String text = TEXTS.text("count." + severity.name(), findings.count(severity));
            label.setText(text);
            label.setEnabled(findings.count(severity) > 0);
        });
        first.setText(open || all.isEmpty() ? "" : all.get(0).text());
        first.setToolTipText(all.isEmpty() ? null : all.get(0).text());
        scroll.setVisible(open);
        List<Row> wanted = all.stream()
                .map(f -> new Row(
                        f.severity(),
                        f.text(),
                        f.remedy().map(Finding.Remedy::label).orElse("")))
                .toList();
        if (!wanted.equals(shown)) {
            shown = wanted;
            rows.show(all);
        } else {
            rows.replace(all);
        }
        if (turned) {
            revalidate();
        }
    }

    /** One row for each finding, as wide as the viewport. */
    private final class Rows extends JPanel implements Scrollable {
        private transient List<Finding> findingsShown = List.of();

        Rows() {
            super(new WrappedTextLayout("insets 4 12 8 12, fillx, gap 8, wrap 4", "[][grow,fill][][]"));
        }

        void show(List<Finding> all) {
            findingsShown = all;
            removeAll();
            for (int i = 0; i < all.size(); i++) {
                addRow(i, all.get(i));
            }
            if (all.isEmpty()) {
                add(new JLabel(TEXTS.text("nothing")), "span");
            }
            revalidate();
            repaint();
        }

        /** Replaces what the rows do, where they look as before. */
        void replace(List<Finding> all) {
            findingsShown = all;
        }

        private void addRow(int index, Finding finding) {
            JLabel sign = new JLabel(sign(finding.severity()));
            sign.getAccessibleContext()
                    .setAccessibleName(TEXTS.text("count." + finding.severity().name(), 1));
            WrappedText text = new WrappedText(ThemeColors::text);
            text.showText(finding.text());
            text.setToolTipText(TradeTerms.explained(finding.text()).orElse(null));
            text.setCursor(Cursor.getPredefinedCursor(Cursor.HAND_CURSOR));
            text.addMouseListener(new MouseAdapter() {
                @Override
                public void mouseClicked(MouseEvent e) {
                    findings.show(findingsShown.get(index));
                }
            });
            JButton show = new JButton(TEXTS.text("show"));
            show.setName("show finding " + index);
            show.setToolTipText(TEXTS.text("show.tip." + finding.place().name()));
            show.getAccessibleContext().setAccessibleName(TEXTS.text("show.named", finding.text()));
            show.addActionListener(e -> findings.show(findingsShown.get(index)));
            add(sign, "aligny top, gaptop 2");
            add(text, "wmin 0, aligny top, gaptop 2");
            add(show, "aligny top");
            add(remedyButton(index, finding.remedy()), "aligny top, growx");
        }

        private JComponent remedyButton(int index, Optional<Finding.Remedy> remedy) {
            return remedy.<JComponent>map(mend -> {
                        JButton button = new JButton(mend.label());
                        button.setName("mend finding " + index);
                        button.addActionListener(e -> findingsShown
                                .get(index)
                                .remedy()
                                .ifPresent(r -> r.apply().run()));
                        return button;
                    })
                    .orElseGet(JLabel::new);
        }

        @Override
        public Dimension getPreferredScrollableViewportSize() {
            return getPreferredSize();
        }

        @Override
        public int getScrollableUnitIncrement(Rectangle visible, int orientation, int direction) {
            return UIScale.scale(LINE_PX) / 2;
        }

        @Override
        public int getScrollableBlockIncrement(Rectangle visible, int orientation, int direction) {
            return visible.height;
        }

        @Override
        public boolean getScrollableTracksViewportWidth() {
            return true;
        }

        @Override
        public boolean getScrollableTracksViewportHeight() {
            return false;
        }
    }

    /** Gives the list one line or, where it is open, a third of the height, and the drawing the rest. */
    private record AtFoot(JComponent drawing, FindingsPanel list) implements LayoutManager {
        @Override
        public void layoutContainer(Container parent) {
            int line = UIScale.scale(LINE_PX);
            int foot = Math.min(
                    parent.getHeight(),
                    list.findings.isOpen() ? Math.max(line, (int) (OPEN_SHARE * parent.getHeight())) : line);
            drawing.setBounds(0, 0, parent.getWidth(), parent.getHeight() - foot);
            list.setBounds(0, parent.getHeight() - foot, parent.getWidth(), foot);
        }

        @Override
        public Dimension preferredLayoutSize(Container parent) {
            Dimension size = drawing.getPreferredSize();
            return new Dimension(size.width, size.height + UIScale.scale(LINE_PX));
        }

        @Override
        public Dimension minimumLayoutSize(Container parent) {
            Dimension size = drawing.getMinimumSize();
            return new Dimension(size.width, size.height + UIScale.scale(LINE_PX));
        }

        @Override
        public void addLayoutComponent(String name, Component component) {}

        @Override
        public void removeLayoutComponent(Component component) {}
    }

    private static StateIcon sign(Severity severity) {
        return switch (severity) {
            case STOP -> StateIcon.CROSS;
            case MIND -> StateIcon.EXCLAMATION_MARK;
            case NOTE -> StateIcon.NOTE;
        };
    }
}
