import { Validator } from "@seriousme/openapi-schema-validator";
import type { Express } from "express";
import { describe, expect, it } from "vitest";
import { serving } from "../serving.js";

interface OpenApi {
  readonly paths: Record<string, Record<string, { operationId: string }>>;
  readonly components: { schemas: Record<string, object> };
}

/** Method and address of every route that the application has under /api. */
function routesOf(app: Express): string[] {
  return app.router.stack.flatMap(({ route }) =>
    route?.path.startsWith("/api/")
      ? route.stack.map(({ method }) => `${method} ${route.path.replace(/:(\w+)/g, "{$1}")}`)
      : [],
  );
}

describe("the OpenAPI document", () => {
  it("is valid by a general validator", async () => {
    const { ask } = await serving();
    const validator = new Validator();
    const result = await validator.validate(await (await ask("/api/openapi.json")).json());
    expect(result).toMatchObject({ valid: true });
    expect(validator.version).toBe("3.1");
  });

  it("describes each route, and no other", async () => {
    const { app, ask } = await serving();
    const { paths } = (await (await ask("/api/openapi.json")).json()) as OpenApi;
    const described = Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method} ${path}`),
    );
    const routes = new Set(routesOf(app));
    routes.delete("get /api/openapi.json");
    expect(new Set(described)).toEqual(routes);
  });

  it("names each operation once and has every schema that it refers to", async () => {
    const { ask } = await serving();
    const text = await (await ask("/api/openapi.json")).text();
    const { paths, components } = JSON.parse(text) as OpenApi;
    const ids = Object.values(paths).flatMap((path) =>
      Object.values(path).map(({ operationId }) => operationId),
    );
    expect(new Set(ids).size).toBe(ids.length);
    const named = [...text.matchAll(/"\$ref":"#\/components\/schemas\/(\w+)"/g)].map(([, name]) => name);
    expect(Object.keys(components.schemas)).toEqual(expect.arrayContaining(named));
    expect(named).toContain("StudyDocument");
  });

  it("says which parameters have to be given", async () => {
    const { ask } = await serving();
    const { paths } = (await (await ask("/api/openapi.json")).json()) as {
      paths: Record<string, Record<string, { parameters: { name: string; required: boolean }[] }>>;
    };
    const required = (method: string, path: string) =>
      paths[path]?.[method]?.parameters.filter((each) => each.required).map(({ name }) => name);
    expect(required("get", "/api/comparison")).toEqual(["left", "right"]);
    expect(required("put", "/api/studies/{id}")).toEqual(["id", "If-Match"]);
  });

  it("has a page that tells each operation in words", async () => {
    const { app, ask } = await serving();
    const page = await (await ask("/api")).text();
    for (const route of routesOf(app)) {
      const [method = "", path = ""] = route.split(" ");
      if (path !== "/api/openapi.json") expect(page).toContain(`${method.toUpperCase()} ${path}`);
    }
  });
});
