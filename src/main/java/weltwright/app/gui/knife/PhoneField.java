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

/** The line for the phone that took the photo: one whose lens was measured, or none. */
final class PhoneField {
    private static final ComboBoxItem<Optional<CalibratedLens>> NONE =
            new ComboBoxItem<>(Optional.empty(), "Not measured");

    private final JComboBox<ComboBoxItem<Optional<CalibratedLens>>> box = new JComboBox<>();
    private List<CalibratedLens> kept = List.of();
    private boolean showing;

    PhoneField(JobModel bench, PhoneLensStore phones) {

        box.setName("phone");
        box.addItem(NONE);
        box.addActionListener(e -> {
            if (!showing) {
                Optional<CalibratedLens> chosen = ComboBoxItem.chosen(box);
                bench.change(job -> job.withSettings(job.settings().withPhone(chosen)));
            }
        });
        box.addPopupMenuListener(new PopupMenuListener() {
            @Override
            public void popupMenuWillBecomeVisible(PopupMenuEvent e) {
                kept = phones.all();
                fill(bench.job());
            }

            @Override
            public void popupMenuWillBecomeInvisible(PopupMenuEvent e) {
                // the choice itself tells
            }

            @Override
            public void popupMenuCanceled(PopupMenuEvent e) {
                // nothing was chosen
            }
        });
    }

    void addTo(FormPanel form) {
        form.line("Phone", (char) 0, box, "A phone whose lens was measured (File, Measure a phone's lens)");
    }

    void follow(Job job) {
        if (!ComboBoxItem.chosen(box).equals(job.settings().phone())) {
            fill(job);
        }
    }

    /** All that were kept when last looked, and the one of the job, which may have come from another computer. */
    private void fill(Job job) {
        Optional<CalibratedLens> now = job.settings().phone();
        List<CalibratedLens> all = new ArrayList<>(kept);
        now.filter(lens -> !all.contains(lens)).ifPresent(all::add);
        showing = true;
        box.removeAllItems();
        box.addItem(NONE);
        all.forEach(lens -> box.addItem(new ComboBoxItem<>(Optional.of(lens), lens.name())));
        ComboBoxItem.choose(box, now);
        showing = false;
    }
}
