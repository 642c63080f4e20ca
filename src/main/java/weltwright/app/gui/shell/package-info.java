/**
 * The main window: menus, actions, notifications, files.
 *
 * <p>In: User actions.
 *
 * <p>Out: A running application.
 *
 * <p>Uses: {@code camera.lens}, {@code ground.sheet}, {@code image}, {@code io}, {@code job}, {@code trace},
 * {@code trace.capture}, {@code units}, sub-packages of {@code app.gui} and sub-packages of {@code sheath}; Swing,
 * FlatLaf and MigLayout.
 */
package weltwright.app.gui.shell;
