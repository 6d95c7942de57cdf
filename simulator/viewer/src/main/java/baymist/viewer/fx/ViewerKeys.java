package baymist.viewer.fx;

import baymist.viewer.draw.Camera;
import baymist.viewer.draw.View;
import javafx.scene.input.KeyCode;

/** What keys do. */
final class ViewerKeys {
    private static final double TURN = Math.toRadians(6);
    private static final double MOVE = 0.05;

    private ViewerKeys() {}

    /**
     * Does what a key asks for.
     *
     * @param inView whether no control has the keyboard, so that arrows and space are free
     * @return whether the key had a meaning
     */
    static boolean press(KeyCode key, boolean shift, boolean inView, Desk desk) {
        switch (key) {
            case DIGIT1 -> desk.lookFrom(View.ISO);
            case DIGIT2 -> desk.lookFrom(View.TOP);
            case DIGIT3 -> desk.lookFrom(View.SIDE);
            case DIGIT4 -> desk.lookFrom(View.FRONT);
            case P -> desk.previewNow();
            case ESCAPE -> desk.stop();
            case COMMA -> desk.timeBar().step(-0.01);
            case PERIOD -> desk.timeBar().step(0.01);
            case OPEN_BRACKET -> desk.timeBar().faster(-1);
            case CLOSE_BRACKET -> desk.timeBar().faster(1);
            default -> {
                return inView && inView(key, shift, desk);
            }
        }
        return true;
    }

    private static boolean inView(KeyCode key, boolean shift, Desk desk) {
        Camera c = desk.view().camera();
        switch (key) {
            case SPACE -> desk.timeBar().playOrPause();
            case LEFT -> desk.view().set(shift ? c.panned(-MOVE, 0) : c.turned(TURN, 0));
            case RIGHT -> desk.view().set(shift ? c.panned(MOVE, 0) : c.turned(-TURN, 0));
            case UP -> desk.view().set(shift ? c.panned(0, -MOVE) : c.turned(0, TURN));
            case DOWN -> desk.view().set(shift ? c.panned(0, MOVE) : c.turned(0, -TURN));
            case PLUS, EQUALS, ADD -> desk.view().set(c.zoomed(0.9));
            case MINUS, SUBTRACT -> desk.view().set(c.zoomed(1 / 0.9));
            default -> {
                return false;
            }
        }
        return true;
    }
}
