package weltwright.app.gui.knife;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import javax.swing.JComboBox;
import javax.swing.event.PopupMenuEvent;
import javax.swing.event.PopupMenuListener;
import weltwright.app.gui.form.ComboBoxItem;
import weltwright.app.gui.form.FormPanel;
import weltwright.app.gui.model.JobModel;
import weltwright.camera.lens.CalibratedLens;
import weltwright.job.Job;
import weltwright.job.PhoneLensStore;
import weltwright.message.Messages;

/** The row for the phone that took the photo: one with a calibrated lens, or none. */
final class PhoneField {
    private static final Messages TEXTS = Messages.of(PhoneField.class);

    private static final ComboBoxItem<Optional<CalibratedLens>> NONE =
            new ComboBoxItem<>(Optional.empty(), TEXTS.text("phone-field.not-measured"));

    private final JComboBox<ComboBoxItem<Optional<CalibratedLens>>> comboBox = new JComboBox<>();
    private List<CalibratedLens> storedLenses = List.of();
    private boolean updating;

    PhoneField(JobModel model, PhoneLensStore lensStore) {
        comboBox.setName("phone");
        comboBox.addItem(NONE);
        comboBox.addActionListener(e -> {
            if (!updating) {
                Optional<CalibratedLens> chosen = ComboBoxItem.selected(comboBox);
                model.change(job -> job.withSettings(job.settings().withPhone(chosen)));
            }
        });
        comboBox.addPopupMenuListener(new PopupMenuListener() {
            @Override
            public void popupMenuWillBecomeVisible(PopupMenuEvent e) {
                storedLenses = lensStore.all();
                fillItems(model.job());
            }

            @Override
            public void popupMenuWillBecomeInvisible(PopupMenuEvent e) {
                // the action listener handles the selection
            }

            @Override
            public void popupMenuCanceled(PopupMenuEvent e) {
                // nothing was chosen
            }
        });
    }

    void addTo(FormPanel form) {
        form.addRow(TEXTS.text("phone-field.phone"), comboBox, TEXTS.text("phone-field.a-phone-whose-lens-was"));
    }

    void update(Job job) {
        if (!ComboBoxItem.selected(comboBox).equals(job.settings().phone())) {
            fillItems(job);
        }
    }

    /** Lists the stored lenses and that of the job, which may come from another computer. */
    private void fillItems(Job job) {
        Optional<CalibratedLens> current = job.settings().phone();
        List<CalibratedLens> all = new ArrayList<>(storedLenses);
        current.filter(lens -> !all.contains(lens)).ifPresent(all::add);
        updating = true;
        comboBox.removeAllItems();
        comboBox.addItem(NONE);
        all.forEach(lens -> comboBox.addItem(new ComboBoxItem<>(Optional.of(lens), lens.name())));
        ComboBoxItem.select(comboBox, current);
        updating = false;
    }
}
