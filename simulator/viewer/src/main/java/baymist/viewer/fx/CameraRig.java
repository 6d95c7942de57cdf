package baymist.viewer.fx;

import baymist.geom.Vec3;
import baymist.viewer.draw.Camera;
import javafx.scene.PerspectiveCamera;
import javafx.scene.transform.Affine;

/** JavaFX's camera, put where ours says. */
final class CameraRig {
    private final PerspectiveCamera camera = new PerspectiveCamera(true);
    private final Affine place = new Affine();

    CameraRig() {
        camera.setVerticalFieldOfView(true);
        camera.setFieldOfView(Math.toDegrees(Camera.FIELD_OF_VIEW_RAD));
        camera.getTransforms().setAll(place);
    }

    PerspectiveCamera node() {
        return camera;
    }

    /** @param sizeM diagonal of everything that is shown, m */
    void set(Camera c, double sizeM) {
        Vec3 r = c.right();
        Vec3 d = c.up().negate();
        Vec3 f = c.forward();
        Vec3 e = c.eye();
        place.setToTransform(r.x(), d.x(), f.x(), e.x(), r.y(), d.y(), f.y(), e.y(), r.z(), d.z(), f.z(), e.z());
        camera.setNearClip(Math.max(0.002 * sizeM, c.distanceM() - 1.5 * sizeM));
        camera.setFarClip(c.distanceM() + 2.5 * sizeM);
    }
}
