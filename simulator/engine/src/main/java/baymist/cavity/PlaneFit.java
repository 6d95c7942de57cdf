package baymist.cavity;

import baymist.geom.Vec3;
import java.util.List;

/** Plane of least squared distances to a set of points. */
final class PlaneFit {
    private PlaneFit() {}

    /** Unit normal: the direction of least scatter, by cyclic Jacobi rotations of the 3 x 3 covariance. */
    static Vec3 normal(List<Vec3> points) {
        Vec3 mean = Vec3.ZERO;
        for (Vec3 p : points) {
            mean = mean.plus(p);
        }
        mean = mean.times(1.0 / points.size());
        double[][] a = new double[3][3];
        for (Vec3 p : points) {
            Vec3 d = p.minus(mean);
            for (int i = 0; i < 3; i++) {
                for (int j = 0; j < 3; j++) {
                    a[i][j] += d.get(i) * d.get(j);
                }
            }
        }
        double[][] v = {{1, 0, 0}, {0, 1, 0}, {0, 0, 1}};
        for (int sweep = 0; sweep < 30; sweep++) {
            rotate(a, v, 0, 1);
            rotate(a, v, 0, 2);
            rotate(a, v, 1, 2);
        }
        int least = a[0][0] <= a[1][1] && a[0][0] <= a[2][2] ? 0 : a[1][1] <= a[2][2] ? 1 : 2;
        return new Vec3(v[0][least], v[1][least], v[2][least]).unit();
    }

    private static void rotate(double[][] a, double[][] v, int p, int q) {
        if (a[p][q] == 0) {
            return;
        }
        double theta = 0.5 * Math.atan2(2 * a[p][q], a[q][q] - a[p][p]);
        double c = Math.cos(theta);
        double s = Math.sin(theta);
        for (int k = 0; k < 3; k++) {
            double kp = a[k][p];
            double kq = a[k][q];
            a[k][p] = c * kp - s * kq;
            a[k][q] = s * kp + c * kq;
        }
        for (int k = 0; k < 3; k++) {
            double pk = a[p][k];
            double qk = a[q][k];
            a[p][k] = c * pk - s * qk;
            a[q][k] = s * pk + c * qk;
            double vp = v[k][p];
            double vq = v[k][q];
            v[k][p] = c * vp - s * vq;
            v[k][q] = s * vp + c * vq;
        }
    }
}
