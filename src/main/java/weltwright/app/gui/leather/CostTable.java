package weltwright.app.gui.leather;

import java.math.BigDecimal;
import java.util.Optional;
import javax.swing.JLabel;
import javax.swing.JPanel;
import javax.swing.SwingConstants;
import net.miginfocom.swing.MigLayout;
import weltwright.layout.cost.SheathCost;
import weltwright.message.Messages;

/** What one sheath costs, in rows that add up. */
final class CostTable extends JPanel {
    private final transient Messages messages = Messages.of(CostTable.class);
    private transient Optional<SheathCost> shown = Optional.empty();

    CostTable() {
        super(new MigLayout("insets 0, fillx, wrap 2, gapy 3", "[grow,fill][right]"));
        setName("cost");
    }

    void show(Optional<SheathCost> cost) {
        setVisible(cost.isPresent());
        if (cost.equals(shown)) {
            return;
        }
        shown = cost;
        removeAll();
        cost.ifPresent(each -> {
            row(each, "leather", each.leather(), false);
            row(each, "hardware", each.hardware(), false);
            row(each, "thread", each.thread(), false);
            row(each, "finish", each.glueAndFinish(), false);
            row(each, "labour", each.labour(), false);
            row(each, "overhead", each.overhead(), false);
            row(each, "margin", each.margin(), false);
            row(each, "net", each.net(), false);
            row(each, "tax", each.tax(), false);
            row(each, "gross", each.gross(), true);
        });
        revalidate();
        repaint();
    }

    private void row(SheathCost cost, String key, BigDecimal amount, boolean bold) {
        JLabel what = new JLabel(messages.text("cost." + key));
        JLabel figure = new JLabel(cost.words(amount), SwingConstants.TRAILING);
        figure.setName("cost " + key);
        if (bold) {
            what.putClientProperty("FlatLaf.style", "font: bold");
            figure.putClientProperty("FlatLaf.style", "font: bold");
        }
        add(what, "wmin 0");
        add(figure);
    }
}
