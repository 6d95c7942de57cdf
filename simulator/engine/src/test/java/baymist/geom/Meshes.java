package baymist.geom;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Small meshes for the tests of this package. */
final class Meshes {
    private Meshes() {}

    static TriangleMesh of(Vec3... corners) {
        double[] xyz = new double[3 * corners.length];
        int[] index = new int[corners.length];
        for (int i = 0; i < corners.length; i++) {
            xyz[3 * i] = corners[i].x();
            xyz[3 * i + 1] = corners[i].y();
            xyz[3 * i + 2] = corners[i].z();
            index[i] = i;
        }
        return new TriangleMesh(xyz, index);
    }

    /** Sphere of latitude and longitude bands with shared vertices. */
    static TriangleMesh sphere(double radius, int around) {
        int rows = around / 2;
        List<Vec3> v = new ArrayList<>();
        v.add(new Vec3(0, 0, -radius));
        for (int j = 1; j < rows; j++) {
            double a = Math.PI * j / rows;
            for (int k = 0; k < around; k++) {
                double b = 2 * Math.PI * k / around;
                v.add(new Vec3(
                        radius * Math.sin(a) * Math.cos(b), radius * Math.sin(a) * Math.sin(b), -radius * Math.cos(a)));
            }
        }
        v.add(new Vec3(0, 0, radius));
        List<Integer> t = new ArrayList<>();
        for (int k = 0; k < around; k++) {
            int next = (k + 1) % around;
            t.addAll(List.of(0, 1 + next, 1 + k));
            for (int j = 0; j + 2 < rows; j++) {
                int a = 1 + j * around;
                int b = a + around;
                t.addAll(List.of(a + k, a + next, b + next, a + k, b + next, b + k));
            }
            int top = 1 + (rows - 2) * around;
            t.addAll(List.of(v.size() - 1, top + k, top + next));
        }
        return indexed(v, t);
    }

    static TriangleMesh indexed(List<Vec3> v, List<Integer> t) {
        double[] xyz = new double[3 * v.size()];
        for (int i = 0; i < v.size(); i++) {
            xyz[3 * i] = v.get(i).x();
            xyz[3 * i + 1] = v.get(i).y();
            xyz[3 * i + 2] = v.get(i).z();
        }
        return new TriangleMesh(xyz, t.stream().mapToInt(Integer::intValue).toArray());
    }

    /** Random triangles in the unit cube, edges up to {@code size}. */
    static TriangleMesh soup(int count, double size, Random random) {
        Vec3[] corners = new Vec3[3 * count];
        for (int i = 0; i < count; i++) {
            Vec3 at = point(random);
            for (int k = 0; k < 3; k++) {
                corners[3 * i + k] = at.plus(size, point(random));
            }
        }
        return of(corners);
    }

    static Vec3 point(Random random) {
        return new Vec3(random.nextDouble(), random.nextDouble(), random.nextDouble());
    }

    static Vec3 direction(Random random) {
        return new Vec3(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()).unit();
    }
}
