package weltwright.app.gui.widget;

import java.awt.Component;
import javax.swing.JTable;
import javax.swing.JViewport;
import javax.swing.event.TableModelEvent;
import javax.swing.table.TableCellRenderer;
import javax.swing.table.TableColumn;
import javax.swing.table.TableModel;

/**
 * A table whose columns are as wide as what they hold, so that no text is cut. Room that is left is shared among them;
 * where there is too little, the table scrolls sideways.
 */
public final class FittedTable extends JTable {
    private static final int MARGIN_PX = 8;

    public FittedTable(TableModel model) {
        super(model);
        setShowHorizontalLines(true);
        getTableHeader().setReorderingAllowed(false);
        fitColumns();
    }

    @Override
    public void tableChanged(TableModelEvent e) {
        super.tableChanged(e);
        fitColumns();
    }

    @Override
    public void updateUI() {
        super.updateUI();
        fitColumns();
    }

    @Override
    public boolean getScrollableTracksViewportWidth() {
        return !(getParent() instanceof JViewport viewport) || getPreferredSize().width <= viewport.getWidth();
    }

    private void fitColumns() {
        if (getTableHeader() == null) {
            return; // being constructed
        }
        for (int i = 0; i < getColumnCount(); i++) {
            TableColumn column = getColumnModel().getColumn(i);
            TableCellRenderer heading = getTableHeader().getDefaultRenderer();
            int width =
                    width(heading.getTableCellRendererComponent(this, column.getHeaderValue(), false, false, -1, i));
            for (int row = 0; row < getRowCount(); row++) {
                width = Math.max(width, width(prepareRenderer(getCellRenderer(row, i), row, i)));
            }
            column.setPreferredWidth(width + MARGIN_PX);
        }
    }

    private static int width(Component rendered) {
        return rendered.getPreferredSize().width;
    }
}
